// Jobs, stones and metal as they are put into words, for tests. All is made when it is asked for.
import { closure, type Weighing } from '../../src/reckoning/closure.ts';
import { massNg } from '../../src/units/mass.ts';

export const g = (grams: number) => massNg(Math.round(grams * 1e9));
const worth = { uRandomG: 0.0078, factors: [] };
export const part = (grams: number) => ({ ng: g(grams), worth });
/** Weighings in (positive) and out (negative) in grams, each 0.0078 g known and read to 0.01 g. */
export const job = (...grams: readonly number[]) =>
  grams.map((mass, i): Weighing => ({ id: `${i}`, sign: mass > 0 ? 1 : -1, ng: g(Math.abs(mass)), stepNg: g(0.01), worth }));
export const usual = { meanG: 0.05, tauG: 0.01 };
/** One closing of each kind. */
export const CLOSINGS = {
  closes: () => closure(job(8.42, 1.98, -1.37, -0.11, -8.9)),
  even: () => closure(job(8.42, -8.42)),
  again: () => closure(job(8.42, -8.39)),
  differs: () => closure(job(8.42, -7.87)),
  gained: () => closure(job(8.42, -8.6)),
  usual: () => closure(job(8.42, -8.37), { usual }),
  beyond: () => closure(job(8.42, -7.87), { usual }),
  wide: () => closure(job(8.42, -8.42), { fitnessG: 0.01 }),
  unweighed: () => closure(job(8.42, -8.42), { unweighed: true }),
} as const;
/** Text with its spaces as they are typed. */
export const plain = (text: string) => text.replaceAll('\u00a0', ' ');
/** What no text may say, whoever reads it. */
export const KEPT_FROM_ALL = /proof|proven|certifi|exact|all yours|identity|undefined|NaN/i;
/** What nobody saw: what is not there is missing, and dust is what such work usually leaves. */
export const NO_CAUSE = /went as dust|has gone|is wrong by/;
