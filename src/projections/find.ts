// What the Find box searches: bag codes, names of lots and places, descriptions, marks. Nothing personal, which stays sealed.
import type { Thing } from '../ledger/thing.ts';

const MARKS = ['bag', 'name', 'description', 'seat', 'species', 'mark', 'inscription', 'seal', 'metal'];

/** The words by which a thing is found. */
export function wordsOf(thing: Thing): string {
  const own = thing.kind === 'bag' ? [thing.id] : [];
  return [...own, ...MARKS.map((mark) => thing.says[mark]).filter((words) => words !== undefined)].join(' ');
}
