// Ring sizes: what is kept is the measured inside circumference, the gauge it was read on and the system; the label is only a way of saying it.
const MM_PER_INCH = 25.4;
/** Four definitions of US size n in print, in inches: `a + b·n` of the inside diameter or circumference. The first is ours. */
const US_DEFINITIONS = [
  { id: 'A_0.458+0.032n', a: 0.458, b: 0.032, of: 'diameter', sources: ['WRS', 'JC'] },
  { id: 'B_1.4216+0.1018n_circ', a: 1.4216, b: 0.1018, of: 'circumference', sources: ['GNU'] },
  { id: 'C_0.454+0.0324n', a: 0.454, b: 0.0324, of: 'diameter', sources: ['ORD'] },
  { id: 'D_1.43+0.102n_circ', a: 1.43, b: 0.102, of: 'circumference', sources: ['ENA'] },
];
const usDiameterMm = (n) => (US_DEFINITIONS[0].a + US_DEFINITIONS[0].b * n) * MM_PER_INCH;
/** Inside circumference of size n and back. US as above; UK by BS 6820, A = 1; ISO 8653 is the circumference; Japan by GNU units; Swiss, Italian and Spanish are ISO less 40. */
export const RING_SYSTEMS = {
  us: {
    words: 'US',
    mm: (n) => Math.PI * usDiameterMm(n),
    sizeOf: (mm) => (mm / Math.PI / MM_PER_INCH - US_DEFINITIONS[0].a) / US_DEFINITIONS[0].b,
    grain: 0.25,
  },
  uk: { words: 'UK', mm: (n) => 36.25 + 1.25 * n, sizeOf: (mm) => (mm - 36.25) / 1.25, grain: 0.5 },
  iso: { words: 'ISO', mm: (n) => n, sizeOf: (mm) => mm, grain: 0.5 },
  jp: { words: 'Japan', mm: (n) => (Math.PI * (n + 38)) / 3, sizeOf: (mm) => (3 * mm) / Math.PI - 38, grain: 1 },
  ch: { words: 'Swiss', mm: (n) => n + 40, sizeOf: (mm) => mm - 40, grain: 0.5 },
};
/** Inside circumference in mm of a label ("7 1/4", "L½", "Z+1", "54"), or null when the system has no such size. */
export function circumferenceOf(system, label) {
  const n = system === 'uk' ? readLetter(label) : readNumber(label);
  return n === null || n < 0 ? null : RING_SYSTEMS[system].mm(n);
}
/** Inside circumference in mm of a label whose system is not said: a letter is UK, 40 and more ISO, a smaller number US; null when it is no size. */
export function sizeMm(label) {
  const n = readNumber(label);
  return n === null ? circumferenceOf('uk', label) : RING_SYSTEMS[n < 40 ? 'us' : 'iso'].mm(n);
}
/** The nearest label in a system; null below its first size. Read back with `circumferenceOf` it lies within half a grain of the measured size. */
export function labelOf(system, insideCircumferenceMm) {
  const { sizeOf, grain } = RING_SYSTEMS[system];
  const n = Math.round(sizeOf(insideCircumferenceMm) / grain) * grain;
  if (n < (system === 'uk' ? 1 : 0)) return null;
  return system === 'uk' ? formatLetter(n) : `${Math.floor(n)}${FRACTION[n % 1] ?? ''}`;
}
/** "US 7, 54.4 mm inside, steel mandrel": the label beside what was measured and on what. */
export function formatRingSize({ insideCircumferenceMm, system, gauge }) {
  const label = labelOf(system, insideCircumferenceMm);
  return `${label === null ? '' : `${RING_SYSTEMS[system].words} ${label}, `}${insideCircumferenceMm.toFixed(1)}\u00a0mm inside, ${gauge}`;
}
/** Diameter in mm from a circumference in mm. */
export const diameterMm = (circumferenceMm) => circumferenceMm / Math.PI;
/** How much larger `sizes` US sizes are, in mm. */
export function usStepMm(sizes) {
  const diameter = usDiameterMm(sizes) - usDiameterMm(0);
  return { diameter, circumference: Math.PI * diameter };
}
/** Inside circumference in mm of US size n by each definition in print, keyed by its id. */
export function usByDefinitionMm(n) {
  return Object.fromEntries(US_DEFINITIONS.map(({ id, a, b, of }) => [id, (a + b * n) * MM_PER_INCH * (of === 'diameter' ? Math.PI : 1)]));
}
const FRACTION = { 0.25: '¼', 0.5: '½', 0.75: '¾' };
function readNumber(label) {
  const match = /^(\d{1,2})(\.\d{1,2}|\s*[¼½¾]|\s+[123]\/[24])?$/.exec(label.trim());
  return match ? Number(match[1]) + fractionOf(match[2] ?? '') : null;
}
/** A is 1, Z is 26, "Z+1" is 27 (common practice, no source). */
function readLetter(label) {
  const match = /^([A-Z])(\s*½|\s*1\/2|\.5)?(?:\s*\+\s*(\d))?$/i.exec(label.trim());
  if (!match?.[1] || (match[3] && match[1].toUpperCase() !== 'Z')) return null;
  return match[1].toUpperCase().charCodeAt(0) - 64 + (match[2] ? 0.5 : 0) + Number(match[3] ?? 0);
}
function formatLetter(n) {
  const half = n % 1 === 0 ? '' : '½';
  const whole = Math.floor(n);
  return whole <= 26 ? `${String.fromCharCode(64 + whole)}${half}` : `Z${half}+${whole - 26}`;
}
function fractionOf(text) {
  const clean = text.trim();
  const sign = Object.entries(FRACTION).find(([, mark]) => mark === clean);
  if (sign) return Number(sign[0]);
  const [top, bottom] = clean.split('/');
  return bottom ? Number(top) / Number(bottom) : Number(clean);
}
