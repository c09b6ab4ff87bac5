// What a piece should weigh at the end: what came in and every change, weighed or estimated, with the bands of the estimates.
import { type MassNg, massNg } from '../units/mass.ts';

/** Something added (+1) or taken away (−1); a weighed one has no band of its own here. */
export interface Change {
  readonly sign: 1 | -1;
  readonly massNg: MassNg;
  readonly plusMinusNg?: MassNg;
}

/** Expected mass, and how far estimates may move it: bands add, since formulas err together. */
export function expectedWeight(inNg: MassNg, changes: readonly Change[]): { readonly massNg: MassNg; readonly plusMinusNg: MassNg } {
  return {
    massNg: massNg(changes.reduce<number>((sum, change) => sum + change.sign * change.massNg, inNg)),
    plusMinusNg: massNg(changes.reduce<number>((sum, { plusMinusNg = 0 }) => sum + plusMinusNg, 0)),
  };
}
