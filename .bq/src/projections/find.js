const MARKS = ['bag', 'name', 'description', 'seat', 'species', 'inscription', 'seal', 'metal'];
/** What is struck on a piece: one identity mark for each kind. */
const STRUCK = 'mark ';
/** The words by which a thing is found. */
export function wordsOf(thing) {
  const own = thing.kind === 'bag' ? [thing.id] : [];
  const struck = Object.keys(thing.says).filter((mark) => mark.startsWith(STRUCK));
  return [...own, ...[...MARKS, ...struck].map((mark) => thing.says[mark]).filter((words) => words !== undefined)].join(' ');
}
