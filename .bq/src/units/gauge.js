// Wire and sheet gauges in millimetres. A bare number is refused: gauge 18 is 1.024 mm by one system and 1.219 mm by the other.
/** Mils of British Standard Wire Gauge 7/0, 6/0 … 1/0, then 1 to 50 (BS 3737:1964, withdrawn; figures as at engineeringtoolbox.com/swg-standard-wire-gauge-d_1779.html). */
const SWG_MILS = [
  500, 464, 432, 400, 372, 348, 324, 300, 276, 252, 232, 212, 192, 176, 160, 144, 128, 116, 104, 92, 80, 72, 64, 56, 48, 40, 36, 32, 28, 24,
  22, 20, 18, 16.4, 14.8, 13.6, 12.4, 11.6, 10.8, 10, 9.2, 8.4, 7.6, 6.8, 6, 5.2, 4.8, 4.4, 4, 3.6, 3.2, 2.8, 2.4, 2, 1.6, 1.2, 1,
];
/** American Wire Gauge (Brown & Sharpe) in mm, 4/0 as −3 to 50 (ASTM B258: 0.127 mm × 92^((36 − n)/39)); throws outside. */
export function awgMm(n) {
  if (!Number.isInteger(n) || n < -3 || n > 50) throw new RangeError(`AWG runs from -3 (4/0) to 50, got ${n}`);
  return 0.127 * 92 ** ((36 - n) / 39);
}
/** British Standard Wire Gauge in mm, 7/0 as −6 to 50; throws outside. */
export function swgMm(n) {
  const mils = Number.isInteger(n) ? SWG_MILS[n + 6] : undefined;
  if (mils === undefined) throw new RangeError(`SWG runs from -6 (7/0) to 50, got ${n}`);
  return (mils * 25.4) / 1000;
}
/** Reads "18 AWG", "18 B&S", "2/0 SWG"; a bare number is refused with 'which gauge'. */
export function readGauge(text) {
  const match = /^(?:(\d)\/0|(\d{1,2}))\s*(?:ga|gauge)?\s*(awg|b&s|b & s|swg)?$/i.exec(text.trim());
  if (!match) return { problem: 'not a gauge' };
  const n = match[1] ? 1 - Number(match[1]) : Number(match[2]);
  if (!match[3]) return { problem: 'which gauge' };
  const system = match[3].toLowerCase() === 'swg' ? 'swg' : 'awg';
  const lowest = system === 'swg' ? -6 : -3;
  return n < lowest || n > 50 ? { problem: 'not a gauge' } : { system, mm: system === 'swg' ? swgMm(n) : awgMm(n) };
}
