// How carats are said: display and disclosure rules. The raw reading is always kept; none of these changes it.
import { massNg } from '../units/mass.js';
import { NAMED_UNITS } from '../units/mass-units.js';
import { decimalText, divideRounded } from '../units/muldiv.js';

const THOUSANDTH_CT_NG = NAMED_UNITS.carat.ng / 1000;
/** Two decimals as trade papers print them: the third is dropped unless it is a 9 (CIBJO; CART, AGLT). 0.478 is "0.47", 0.999 is "1.00". */
export function paperCarats(ng) {
  const thousandths = divideRounded(BigInt(ng), BigInt(THOUSANDTH_CT_NG), 'half up');
  return decimalText(thousandths / 10n + (thousandths % 10n === 9n ? 1n : 0n), 2);
}
/** Carats a decimal weight may stand for in the US, low and high: ".5" is 0.495 to 0.504 (16 CFR 23.18, FTC18); a third decimal narrows it. */
export function statedRange(stated) {
  const match = /^\d*\.?\d*$/.test(stated) && /\d/.test(stated) ? /\.(\d*)$/.exec(stated) : null;
  if (!match && !/^\d+$/.test(stated)) throw new RangeError(`not a decimal weight: ${stated}`);
  const decimals = Math.max(2, match?.[1]?.length ?? 0);
  const steps = Math.round(Number(stated) * 10 ** (decimals + 1));
  return [(steps - 5) / 10 ** (decimals + 1), (steps + 4) / 10 ** (decimals + 1)];
}
/** What two retail charts (KAY, ROG) let a fraction of a carat mean. No legal table exists (FTC 23.18(d) asks only that the range be told), so this is a shop's setting. */
export const FRACTION_CHARTS = {
  '1/10': { chart1: [0.085, 0.11], chart2: [0.09, 0.11] },
  '1/4': { chart1: [0.23, 0.28], chart2: [0.22, 0.28] },
  '1/3': { chart1: [0.29, 0.36], chart2: [0.29, 0.35] },
  '1/2': { chart1: [0.45, 0.57], chart2: [0.44, 0.53] },
  '5/8': { chart1: [0.58, 0.68], chart2: [0.54, 0.62] },
  '3/4': { chart1: [0.69, 0.79], chart2: [0.7, 0.79] },
  1: { chart1: [0.95, 1.11], chart2: [0.95, 1.05] },
};
/** Whether a weighed stone can be what a paper calls "1/2 ct": inside either chart; null for a fraction that neither has. */
export function isFractionPlausible(paperSays, weighedNg) {
  const charts = FRACTION_CHARTS[paperSays.replace(/\s*(ct|carat)s?$/i, '').trim()];
  if (!charts) return null;
  return Object.values(charts).some(([low, high]) => weighedNg >= caratsNg(low) && weighedNg <= caratsNg(high));
}
const caratsNg = (carats) => massNg(Math.round(carats * NAMED_UNITS.carat.ng));
