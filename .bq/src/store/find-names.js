// Names and telephones looked through as two long texts, a line for each person: every line is met in one pass, newest first, and a search ends at its limit.
const noLines = () => ({ ids: [], starts: [], lastOf: new Map(), text: '\n' });
/** A finder that knows nobody yet. */
export function openFinder() {
  const words = noLines();
  const phones = noLines();
  return {
    know(id, said, phone) {
      add(words, id, said.toLowerCase().replaceAll('\n', ' '));
      if (phone !== '') add(phones, id, digitsOf(phone));
    },
    search(typed, limit) {
      if (typed.trim() === '') return [];
      const found = new Set(linesWith(words, typed.toLowerCase().replaceAll('\n', ' '), limit));
      const digits = /^[\d\s()+./-]+$/.test(typed) ? nationalOf(digitsOf(typed)) : '';
      if (digits.length < DIGITS_MIN) return [...found];
      for (const id of linesWith(phones, digits, limit)) found.add(id);
      // With its country's prefix typed and without it known: the known number is the end of what was typed.
      const isEnd = (known) => known.length >= WHOLE_MIN && digits.endsWith(nationalOf(known));
      if (digits.length >= WHOLE_MIN) for (const id of linesWith(phones, `${digits.slice(1 - WHOLE_MIN)}\n`, limit, isEnd)) found.add(id);
      return [...found].slice(0, limit);
    },
  };
}
function add(lines, id, text) {
  lines.lastOf.set(id, lines.ids.push(id) - 1);
  lines.starts.push(lines.text.length);
  lines.text += `${text}\n`;
}
/** Whose last line holds this text (and, where asked, is right as a whole), from the end of the text back. */
function* linesWith({ ids, starts, lastOf, text }, part, limit, isRight = () => true) {
  let found = 0;
  for (let at = text.lastIndexOf(part); at > 0 && found < limit; ) {
    const row = rowAt(starts, at);
    const id = ids[row] ?? '';
    const from = starts[row] ?? 0;
    if (lastOf.get(id) === row && isRight(text.slice(from, text.indexOf('\n', from)))) {
      found++;
      yield id;
    }
    at = text.lastIndexOf(part, from - part.length);
  }
}
/** The last line that begins at or before this place. */
function rowAt(starts, place) {
  let [low, high] = [0, starts.length - 1];
  while (low < high) {
    const middle = Math.ceil((low + high) / 2);
    if ((starts[middle] ?? 0) <= place) low = middle;
    else high = middle - 1;
  }
  return low;
}
const DIGITS_MIN = 3;
const WHOLE_MIN = 7;
const digitsOf = (text) => text.replace(/\D/g, '');
/** Without the zero that falls away behind a country's prefix (ITU-T E.123, memory). */
const nationalOf = (digits) => digits.replace(/^0+/, '');
