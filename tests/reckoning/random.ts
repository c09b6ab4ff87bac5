// A small seeded generator for simulations, so that every run draws the same numbers, and a balance that errs as its parameters say.
import type { Weighing } from '../../src/reckoning/closure.ts';
import { type MassNg, massNg } from '../../src/units/mass.ts';
import { assumedParameters, type BalanceParameters, rangeFor } from '../../src/weighing/balance.ts';
import { worthOfReading } from '../../src/weighing/uncertainty.ts';

/** Uniform numbers in [0, 1) from a 32-bit seed (mulberry32, public domain). */
export function uniform(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4_294_967_296;
  };
}

/** Standard normal numbers (Box & Muller 1958). */
export function normal(random: () => number): () => number {
  return () => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
}

/** A balance of one range with a known s (infinitely many readings) and linearity in grams, gain 5.8e-5. */
export function balanceWith(id: string, stepG: number, sG: number, linearityG: number): BalanceParameters {
  const ng = (g: number) => massNg(Math.round(g * 1e9));
  const base = assumedParameters({ id, unit: 'g', ranges: [{ maxNg: ng(500), stepNg: ng(stepG) }], repeatabilityNg: ng(sG) });
  return { ...base, linearityNg: ng(linearityG), uGain: 5.8e-5 };
}

export const coarse = balanceWith('0.01 g', 0.01, 0.006, 0.005);
export const fine = balanceWith('0.001 g', 0.001, 0.001, 0.001);

/** A weighing in (+1) or out (−1) as it was read on a balance. */
export const weighed = (balance: BalanceParameters, sign: 1 | -1, ng: number): Weighing => ({
  id: `${sign} ${ng}`,
  sign,
  ng: massNg(ng),
  stepNg: rangeFor(balance, massNg(ng))?.stepNg ?? massNg(0),
  worth: worthOfReading(balance, massNg(ng), { epoch: '2026a' }),
});

/** What the balance shows of a true mass: its gain error, linearity, repeatability, and a zero and a reading rounded to the step. */
export function shownNg(balance: BalanceParameters, trueG: number, gainError: number, random: () => number): MassNg {
  const noise = normal(random);
  const stepNg = balance.ranges[0]?.stepNg ?? 1;
  const zeroNg = (random() - 0.5) * stepNg;
  const lineNg = (2 * random() - 1) * balance.linearityNg;
  const raw = trueG * 1e9 * (1 + gainError) + lineNg + noise() * balance.repeatability.sNg + zeroNg;
  return massNg(Math.round(raw / stepNg) * stepNg);
}
