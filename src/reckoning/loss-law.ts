// What a loss read on balances is worth: usual dust, which is never less than none and is skewed, and weighing error with the steps, as one distribution.
// Every level, chance and limit of a job comes from here.
import { normalTail, normalUpper, studentTail, studentUpper } from './distributions.ts';

/** Chance of a false note (at the bench: "weigh again now") and of a false action (to the owner), each for one side of one job. */
export const NOTE_ALPHA = 0.05;
export const ACTION_ALPHA = 0.001;
/** Upper 5 % point of the normal distribution. */
export const Z95 = 1.6448536269514722;
/** No weight is known better than 1 µg, the finest a balance of this trade shows: keeps a variance off zero. */
export const LEAST_U_G = 1e-6;

/** What such work usually loses as dust: mean, and spread between jobs with the doubt of the mean in it. */
export interface UsualLoss {
  readonly meanG: number;
  readonly tauG: number;
}
/** Weighing error of a loss that was read in steps (u includes the rounding), and the usual dust where the work makes any. */
export interface Spread {
  readonly uG: number;
  readonly stepNg: number;
  readonly dof?: number;
  readonly usual?: UsualLoss;
}

const NORMAL = Number.POSITIVE_INFINITY;
/** √(u² − d²/12): what is left of the weighing error once the step is taken by itself. */
const smoothU = ({ uG, stepNg }: Spread): number => Math.max(LEAST_U_G, Math.sqrt(Math.max(0, uG ** 2 - (stepNg / 1e9) ** 2 / 12)));
const halfStepG = ({ stepNg }: Spread): number => stepNg / 2e9;

/**
 * Dust is taken as lognormal with the mean and spread given: of the skewed laws of one mean and spread it has the heaviest far tail,
 * so that a promise kept for it is kept for gamma and exponential dust too (by simulation).
 */
interface Dust {
  readonly mu: number;
  readonly sigma: number;
}
function dustOf({ usual }: Spread): Dust | null {
  if (!usual || !(usual.meanG > 0)) return null;
  const variance = Math.log1p((usual.tauG / usual.meanG) ** 2);
  return { mu: Math.log(usual.meanG) - variance / 2, sigma: Math.sqrt(variance) };
}

/** The dust that `tail` of such jobs exceed, in grams. */
export function dustUpper(usual: UsualLoss, z: number): number {
  const dust = dustOf({ uG: 0, stepNg: 0, usual });
  return dust ? Math.exp(dust.mu + z * dust.sigma) : 0;
}

/** Chance of a loss of `lossNg` or more, read in steps, when no more than usual was lost: P(dust + error > r − d/2), 1 − Φ((r − d/2)/√(u² − d²/12)) where the work makes no dust. */
export function lossTail(lossNg: number, spread: Spread): number {
  const [u, dof, dust] = [smoothU(spread), spread.dof ?? NORMAL, dustOf(spread)];
  const beyondG = lossNg / 1e9 - halfStepG(spread);
  return dust ? sumTail(beyondG, u, dof, dust) : studentTail(beyondG / u, dof);
}

/** The loss as a standard normal score of its law: normal while nothing changes, however skewed the dust. */
export function scoreOf(lossNg: number, spread: Spread): number {
  const p = lossTail(lossNg + spread.stepNg / 2, spread);
  return p <= 0.5 ? tableDeviate(p) : -tableDeviate(1 - p);
}

/** Both sides of weighing error alone: min(1, 2·tail(|r|)), 1 when the loss is zero. */
export const eitherTail = (lossNg: number, { uG, stepNg, dof = NORMAL }: Spread): number =>
  lossNg === 0 ? 1 : Math.min(1, 2 * lossTail(Math.abs(lossNg), { uG, stepNg, dof }));

/** What a level of suspicion means on these balances. */
export interface Level {
  /** Smallest loss, a multiple of the step, whose chance is no more than `alpha`. */
  readonly flagNg: number;
  readonly trueAlpha: number;
  /** A true loss this large is flagged at least 95 times in 100, however much or little of it is dust. */
  readonly detectableG: number;
}

/** Flag value, its true chance and the detectable loss at `alpha` for readings in steps (derived; confirmed by simulation). */
export function levelAt(alpha: number, spread: Spread): Level {
  const { stepNg, dof = NORMAL } = spread;
  const flagNg = stepNg === 0 ? 1e9 * edge(alpha, spread) : flagInSteps(alpha, spread);
  const detectableG = flagNg / 1e9 - halfStepG(spread) + (dof === NORMAL ? Z95 : studentUpper(0.05, dof)) * smoothU(spread);
  return { flagNg, trueAlpha: lossTail(flagNg, spread), detectableG };
}

/** The smallest multiple of the step whose chance is no more than `alpha`: sought in growing strides from what the dust alone would give. */
function flagInSteps(alpha: number, spread: Spread): number {
  const { stepNg, usual } = spread;
  const isRare = (steps: number) => lossTail(steps * stepNg, spread) <= alpha;
  const guess = Math.max(1, Math.ceil((1e9 * Math.max(usual ? dustUpper(usual, normalUpper(alpha)) : 0, 2 * spread.uG)) / stepNg));
  let [few, enough] = [guess, guess];
  const isHigh = isRare(guess);
  for (let stride = 1; isHigh ? few > 0 && isRare(few) : !isRare(enough); stride *= 2)
    [few, enough] = isHigh ? [Math.max(0, few - stride), few] : [enough, enough + stride];
  while (enough - few > 1) {
    const middle = Math.floor((few + enough) / 2);
    if (isRare(middle)) enough = middle;
    else few = middle;
  }
  return enough * stepNg;
}

/** The loss in grams whose chance is `alpha`, for readings without steps, to twelve figures. */
function edge(alpha: number, spread: Spread): number {
  let [few, enough] = [0, smoothU(spread)];
  while (lossTail(enough * 1e9, spread) > alpha) [few, enough] = [enough, 2 * enough];
  while (enough - few > 1e-12 * enough) {
    const middle = (few + enough) / 2;
    if (lossTail(middle * 1e9, spread) <= alpha) enough = middle;
    else few = middle;
  }
  return enough;
}

/** Places and weights of Gauss & Legendre's rule of five points on [−1, 1] (DLMF 3.5(v)). */
const GAUSS = [
  [-0.906179845938664, 0.236926885056189],
  [-0.538469310105683, 0.478628670499366],
  [0, 0.568888888888889],
  [0.538469310105683, 0.478628670499366],
  [0.906179845938664, 0.236926885056189],
] as const;
/** Where the normal density is cut into panels; beyond them lies less than 1e-15. */
const PANELS = Array.from({ length: 17 }, (_, i) => i - 8);
/** The error's tail turns from 1 to 0 within these multiples of u about the loss: panels end there too. */
const TURNS = [-6, -3, -1, 0, 1, 3, 6];

/** P(D + E > r): the tail of the error, averaged over the dust exp(μ + σz) in panels that end where either factor turns. */
function sumTail(rG: number, u: number, dof: number, { mu, sigma }: Dust): number {
  const turns = TURNS.flatMap((t) => (rG + t * u > 0 ? [(Math.log(rG + t * u) - mu) / sigma] : []));
  const ends = [...PANELS, ...turns.filter((z) => z > -8 && z < 8)].sort((a, b) => a - b);
  let sum = 0;
  for (let i = 1; i < ends.length; i++) {
    const [from, to] = [ends[i - 1] ?? 0, ends[i] ?? 0];
    const half = (to - from) / 2;
    for (const [place, weight] of GAUSS) {
      const z = from + half * (1 + place);
      const excess = errorTail((rG - Math.exp(mu + sigma * z)) / u, dof);
      sum += weight * half * excess * Math.exp((-z * z) / 2);
    }
  }
  return Math.min(1, sum / Math.sqrt(2 * Math.PI));
}

/** Steps to a standard deviation of the table below, and how far it goes: from there on the tail is below 1e-21. */
const [PER_Z, LAST_Z] = [32, 9.5];
const LOG_TAILS = Float64Array.from({ length: LAST_Z * PER_Z + 2 }, (_, i) => Math.log(normalTail(i / PER_Z)));

/** P(E > t·u): the normal tail from a table (relative error below 1e-8), Student's by Hill's normal deviate of it (Hill 1970, CACM algorithm 395). */
function errorTail(t: number, dof: number): number {
  const size = dof === NORMAL ? Math.abs(t) : normalDeviate(Math.abs(t), dof);
  const tail = size >= LAST_Z ? 0 : tableTail(size);
  return t >= 0 ? tail : 1 - tail;
}

/** Cubic through four neighbours of the table. */
function tableTail(z: number): number {
  const at = Math.min(LOG_TAILS.length - 3, Math.max(1, Math.floor(z * PER_Z)));
  const x = z * PER_Z - at;
  const [a, b, c, d] = [LOG_TAILS[at - 1] ?? 0, LOG_TAILS[at] ?? 0, LOG_TAILS[at + 1] ?? 0, LOG_TAILS[at + 2] ?? 0];
  const [first, second, third] = [b - a, c - 2 * b + a, d - 3 * c + 3 * b - a];
  return Math.exp(a + (1 + x) * (first + (x / 2) * (second + ((x - 1) / 3) * third)));
}

/** The z whose upper tail is p ≤ ½, from the same table. */
function tableDeviate(p: number): number {
  const wanted = Math.log(p);
  let [low, high] = [0, LOG_TAILS.length - 1];
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if ((LOG_TAILS[middle] ?? 0) > wanted) low = middle;
    else high = middle;
  }
  const [above, below] = [LOG_TAILS[low] ?? 0, LOG_TAILS[high] ?? 0];
  return wanted <= below ? LAST_Z : (low + (above - wanted) / (above - below)) / PER_Z;
}

function normalDeviate(t: number, dof: number): number {
  const a = dof - 0.5;
  const b = 48 * a * a;
  const square = a * Math.log1p((t * t) / dof);
  const z = Math.sqrt(square);
  const next = ((0.4 * square + 3.3) * square + 24) * square + 85.5;
  return z + (z * (square + 3 - next / (0.8 * square * square + 100 + b))) / b;
}
