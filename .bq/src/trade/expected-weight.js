// What a piece should weigh at the end: what came in and every change, weighed or estimated, with the bands of the estimates.
import { massNg } from '../units/mass.js';
/** Expected mass, and how far estimates may move it: bands add, since formulas err together. */
export function expectedWeight(inNg, changes) {
  return {
    massNg: massNg(changes.reduce((sum, change) => sum + change.sign * change.massNg, inNg)),
    plusMinusNg: massNg(changes.reduce((sum, { plusMinusNg = 0 }) => sum + plusMinusNg, 0)),
  };
}
