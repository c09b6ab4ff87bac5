// Small phrases that several entries say the same way.
import { readingWords } from '../weighing/reading.js';
/** "1 stone", "3 stones". */
export const stonesWords = (stones) => (stones === 1 ? '1 stone' : `${stones} stones`);
/** ", 5.17 g", or ", not weighed": follows what was weighed. */
export const weightWords = (reading) => (reading ? `, ${readingWords(reading)}` : ', not weighed');
/** `before` and the text, or nothing where none was given. */
export const after = (before, text) => (text === undefined ? '' : `${before}${text}`);
