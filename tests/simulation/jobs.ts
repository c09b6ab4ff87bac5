// Jobs with known true masses, dust of three laws and readings of a balance that errs as its plate says.
import { type Closure, closure, type Weighing } from '../../src/reckoning/closure.ts';
import { type Prior, type Rate, usualLoss } from '../../src/reckoning/drift.ts';
import { massNg } from '../../src/units/mass.ts';
import { type BalanceParameters, rangeFor } from '../../src/weighing/balance.ts';
import { worthOfReading } from '../../src/weighing/uncertainty.ts';
import { balanceWith, normal, shownNg } from '../reckoning/random.ts';

export const BENCH = balanceWith('0.01 g', 0.01, 0.006, 0.005);
/** Dust as a share of the metal worked: its mean, and its spread between jobs by the law. */
export const DUST_SHARE = 0.006;
/** What a shop assumes of such work before it has learned: two thirds of the truth. */
export const PRIOR: Prior = { rate: 0.004, uRate: 0.003, tau: 0.003 };

export const LAWS = {
  normal: (random: () => number) => Math.max(0, 1 + 0.4 * normal(random)()),
  exponential: (random: () => number) => -Math.log(1 - random()),
  lognormal: (random: () => number) => Math.exp(Math.sqrt(Math.LN2) * normal(random)() - Math.LN2 / 2),
} as const;
export type Law = keyof typeof LAWS;
export const SPREADS: Readonly<Record<Law, number>> = { normal: 0.4, exponential: 1, lognormal: 1 };

export interface SimJob {
  readonly weighings: readonly Weighing[];
  readonly workedG: number;
}

/** A ring of 3 to 40 g taken in, cut, added to and weighed last, with dust of a law (and so many mean dusts more, at least none) and `goneG` beside it. */
export function simJob(law: Law, random: () => number, goneG = 0, moreDust = 0, workedG = 3 + 37 * random() ** 2): SimJob {
  const balance = BENCH;
  const gain = normal(random)() * balance.uGain;
  const [cutG, addedG] = [workedG * (0.05 + 0.2 * random()), workedG * (0.05 + 0.2 * random())];
  const dustG = DUST_SHARE * workedG * Math.max(0, LAWS[law](random) + moreDust);
  const lastG = Math.max(0.1, workedG - cutG + addedG - dustG - goneG);
  const read = (id: string, sign: 1 | -1, trueG: number) => weighing(balance, id, sign, shownNg(balance, trueG, gain, random));
  return { weighings: [read('in', 1, workedG), read('cut', -1, cutG), read('added', 1, addedG), read('last', -1, lastG)], workedG };
}

function weighing(balance: BalanceParameters, id: string, sign: 1 | -1, ng: number): Weighing {
  const mass = massNg(Math.max(0, ng));
  return {
    id,
    sign,
    ng: mass,
    stepNg: rangeFor(balance, mass)?.stepNg ?? massNg(0),
    worth: worthOfReading(balance, mass, { epoch: 'one' }),
  };
}

export const lossShare = ({ weighings, workedG }: SimJob) => {
  const { lossNg, uG } = closure(weighings);
  return { value: lossNg / 1e9 / workedG, u: uG / workedG };
};
export const judged = ({ weighings, workedG }: SimJob, rate: Rate): Closure =>
  closure(weighings, { usual: usualLoss(rate, PRIOR, workedG) });
