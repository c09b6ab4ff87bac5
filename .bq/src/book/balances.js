// What a balance's plate says: accuracy classes, units and steps.
import { parseMass } from '../units/mass.js';
import { MASS_UNITS } from '../weighing/reading.js';
/** Accuracy classes as OIML R 76-1:2006, 3.2 numbers them; a bench balance may have none. */
export const CLASSES = { I: 'class I', II: 'class II', III: 'class III', none: 'not verified' };
export const UNITS = Object.fromEntries(MASS_UNITS.map((unit) => [unit, unit]));
/** Whether a decimal text is 1, 2 or 5 times a power of ten (OIML R 76-1:2006, 3.4.2 asks it of e; here it is asked of d). */
export const isStep = (text) => /^0*[125]0*$/.test(text.replace('.', ''));
/** The mass that a decimal text is in `unit`, in ng; null when it is beyond a tonne. */
export function ngOf(text, unit) {
  const parsed = parseMass(text, unit);
  return 'ng' in parsed ? parsed.ng : null;
}
