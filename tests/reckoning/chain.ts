// A ring's way through five steps with the piece weighed between them: stones out, cut and filed, joined, polished, stones set.
import { OUTSIDE, type Stream } from '../../src/reckoning/network.ts';
import type { Suspect } from '../../src/reckoning/suspects.ts';
import { massNg } from '../../src/units/mass.ts';
import type { BalanceParameters } from '../../src/weighing/balance.ts';
import { worthOfReading } from '../../src/weighing/uncertainty.ts';

export const STEPS = ['stones out', 'cut and filed', 'joined', 'polished', 'stones set'] as const;

/** Flows in the order they are weighed: name, from, to, true grams. */
export const FLOWS = [
  ['received', OUTSIDE, 'stones out', 8.42],
  ['stones', 'stones out', OUTSIDE, 0.24],
  ['bare', 'stones out', 'cut and filed', 8.18],
  ['cut-off', 'cut and filed', OUTSIDE, 1.37],
  ['filings', 'cut and filed', OUTSIDE, 0.06],
  ['cut', 'cut and filed', 'joined', 6.75],
  ['donor', OUTSIDE, 'joined', 1.9],
  ['solder', OUTSIDE, 'joined', 0.08],
  ['whole', 'joined', 'polished', 8.73],
  ['lemel', 'polished', OUTSIDE, 0.05],
  ['polished', 'polished', 'stones set', 8.68],
  ['stones again', OUTSIDE, 'stones set', 0.24],
  ['returned', 'stones set', OUTSIDE, 8.92],
] as const;

/** The chain as one balance read it; `readNg` gives each flow's reading, null for one not weighed. */
export function chain(balance: BalanceParameters, readNg: (name: string, trueG: number) => number | null) {
  const streams = FLOWS.map(([id, from, to, trueG]): Stream => {
    const read = readNg(id, trueG);
    const ng = read === null ? null : massNg(read);
    return { id, from, to, ng, ...worthOfReading(balance, massNg(Math.max(0, read ?? 0)), { epoch: 'one' }) };
  });
  return { nodes: STEPS, streams };
}

/** What a suspect is called here. */
export const named = (suspect: Suspect) =>
  suspect.fault === 'weighing wrong'
    ? suspect.stream
    : suspect.fault === 'loss'
      ? `loss at ${suspect.nodes.join(' and ')}`
      : suspect.factor;

/** A flow between two holdings, as it was weighed; null where nobody did. */
export const flow = (id: string, from: string, to: string, grams: number | null, uRandomG = 0.01): Stream => {
  const ng = grams === null ? null : massNg(Math.round(grams * 1e9));
  return { id, from, to, ng, uRandomG, factors: [] };
};
