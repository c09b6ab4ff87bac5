// What a piece may honestly have lost by being worn: a paper 40 years old may state a quarter of a gram more.
import { estimateOf } from './estimate.js';
/** mg a year, as measured: one 18K wedding ring, and two rings rubbing on each other, an upper bound for moving parts. */
export const WEAR_MG_PER_YEAR = {
  'wedding ring, 18K': { mg: 6.15, source: 'STEIN' },
  'moving parts': { mg: 360, source: 'DTB' },
};
/** Wear over years at a yearly rate in mg; ± the whole of it, since wearers differ (common practice, no source). */
export function wearMass(years, mgPerYear) {
  return estimateOf((years * mgPerYear) / 1000, 100, 'wear-1');
}
