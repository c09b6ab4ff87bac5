// Whether a stone may stay in for a step of the bench. The strictest source wins, and unknown means take it out. An answer never blocks.
import { CARE_ANSWERS, CARE_FAMILIES, STONE_CARE } from './stone-care-table.js';

const CANNOT_COME_OUT = /closed|foil|cement/i;
const UNKNOWN_OPEN = { species: 'unknown', backing: 'open' };
/** The usual care of a stone at a step, with its source; a stone nobody has listed or named is taken out, or left alone behind a closed back. */
export function stoneCare(stone, step) {
  const subject = subjectOf(stone);
  if (subject) return careOf(subject, step);
  const listed = STONE_CARE.filter(({ species }) => species === stone.species && species !== 'unknown');
  if (CANNOT_COME_OUT.test(stone.backing ?? '')) return familyCare(listed.length > 0 ? 'fixed' : 'unknownClosed', step);
  const cares = listed.filter(({ backing }) => !CANNOT_COME_OUT.test(backing ?? '')).map((found) => careOf(found, step));
  return strictest(cares) ?? stoneCare(UNKNOWN_OPEN, step);
}
/** How the stones that may stay in are protected: boric coat for diamond; none for corundum, which boron etches; slowly for zirconia (JMK, ORH). */
const PROTECTION = {
  diamond: 'protect',
  ruby: 'protectNoBoron',
  sapphire: 'protectNoBoron',
  labCorundum: 'protectNoBoron',
  cubicZirconia: 'protectSlow',
};
/** The torch answer with its way of protecting the stone. */
export function torchAction(stone) {
  const { answer } = stoneCare(stone, 'torch');
  if (isOut(answer)) return 'remove';
  return PROTECTION[stone.species] ?? 'caution';
}
/** The ultrasonic answer; a stone that is usually safe there is so only when it is neither treated nor included. */
export function ultrasonicAllowed(stone) {
  const { answer } = stoneCare(stone, 'ultrasonic');
  return isOut(answer) ? 'no' : answer === 'caution' ? 'caution' : 'yesUnlessTreatedOrIncluded';
}
/** The pickle answer; a hot piece is never quenched with any stone in it (HAM, ORH). */
export function acidPickleAllowed(stone, isHot) {
  if (isHot) return 'noQuench';
  const { answer } = stoneCare(stone, 'pickle');
  return isOut(answer) ? 'no' : answer === 'caution' ? 'caution' : 'yesWhenCool';
}
const isOut = (answer) => strictness(answer) >= strictness('remove');
const strictness = (answer) => CARE_ANSWERS.indexOf(answer);
function subjectOf(stone) {
  const same = (a = '', b = '') => a === b;
  const backing = (text = 'open') => text;
  return STONE_CARE.find(
    (subject) =>
      subject.species === stone.species &&
      same(subject.treatment, stone.treatment) &&
      same(subject.cut, stone.cut) &&
      backing(subject.backing) === backing(stone.backing),
  );
}
function careOf(subject, step) {
  const read = subject.care[step];
  return read ? { answer: read[0], basis: read[1], note: read[2] ?? '' } : familyCare(subject.family, step);
}
function familyCare(family, step) {
  return { answer: CARE_FAMILIES[family][step], basis: 'common practice', note: CARE_FAMILIES[family].words };
}
function strictest(cares) {
  return cares.toSorted((a, b) => strictness(b.answer) - strictness(a.answer))[0];
}
