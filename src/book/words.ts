// Small phrases that several entries say the same way.
import { type Reading, readingWords } from '../weighing/reading.ts';

/** "1 stone", "3 stones". */
export const stonesWords = (stones: number): string => (stones === 1 ? '1 stone' : `${stones} stones`);

/** ", 5.17 g", or ", not weighed": follows what was weighed. */
export const weightWords = (reading: Reading | undefined): string => (reading ? `, ${readingWords(reading)}` : ', not weighed');

/** `before` and the text, or nothing where none was given. */
export const after = (before: string, text: string | undefined): string => (text === undefined ? '' : `${before}${text}`);
