// Fineness as an exact fraction: 14 karat is 14 of 24 and a mark 585 is 585 of 1000, and the two are never the same.
import { massNg } from './mass.js';
import { mulDiv } from './muldiv.js';
/** n karat, n in tenths at the finest (19.2). */
export const karat = (n) => (Number.isInteger(n) ? { parts: n, of: 24 } : { parts: Math.round(n * 10), of: 240 });
/** Parts per thousand, with at most two decimals. */
export const permille = (n) => (Number.isInteger(n) ? { parts: n, of: 1000 } : { parts: Math.round(n * 100), of: 100_000 });
/** Reads "14K", "18ct", "750", ".925" or "0.585"; null when it is none of them or more than pure. */
export function readFineness(text) {
  const karats = /^(\d{1,2}(?:\.\d)?)\s*(?:k|kt|ct|karat|carat)$/i.exec(text.trim());
  const thousandths = /^(\d{3}(?:\.\d{1,2})?)$/.exec(text.trim());
  const share = /^0?\.(\d{2,4})$/.exec(text.trim());
  const found = karats
    ? karat(Number(karats[1]))
    : thousandths
      ? permille(Number(thousandths[1]))
      : share
        ? permille(Number((share[1] ?? '').padEnd(4, '0')) / 10)
        : null;
  return found && found.parts > 0 && found.parts <= found.of ? found : null;
}
/** "14K" or "585", "916.7" with at most two decimals. */
export function formatFineness({ parts, of }) {
  if (of === 24) return `${parts}K`;
  return of === 240 ? `${parts / 10}K` : `${(parts * 1000) / of}`;
}
/** Parts per thousand, as a number: 14K is 583.33… */
export const permilleOf = ({ parts, of }) => (parts * 1000) / of;
/** Whether two finenesses are exactly the same: 14K and 585 are not, 18K and 750 are. */
export const isSameFineness = (a, b) => a.parts * b.of === b.parts * a.of;
/** Fine metal in `ng` of this fineness, to the nearest nanogram. */
export const fineNg = (ng, { parts, of }) => massNg(mulDiv(ng, parts, of, 'half even'));
