// Whether a stone may stay in for a step of the bench. The strictest source wins, and unknown means take it out. An answer never blocks.
import {
  type Basis,
  CARE_ANSWERS,
  CARE_FAMILIES,
  type CareAnswer,
  type CareStep,
  type CareSubject,
  STONE_CARE,
  type StoneAsSeen,
} from './stone-care-table.ts';

export interface Care {
  readonly answer: CareAnswer;
  readonly basis: Basis;
  readonly note: string;
}

const CANNOT_COME_OUT = /closed|foil|cement/i;
const UNKNOWN_OPEN: StoneAsSeen = { species: 'unknown', backing: 'open' };

/** The usual care of a stone at a step, with its source; a stone nobody has listed or named is taken out, or left alone behind a closed back. */
export function stoneCare(stone: StoneAsSeen, step: CareStep): Care {
  const subject = subjectOf(stone);
  if (subject) return careOf(subject, step);
  const listed = STONE_CARE.filter(({ species }) => species === stone.species && species !== 'unknown');
  if (CANNOT_COME_OUT.test(stone.backing ?? '')) return familyCare(listed.length > 0 ? 'fixed' : 'unknownClosed', step);
  const cares = listed.filter(({ backing }) => !CANNOT_COME_OUT.test(backing ?? '')).map((found) => careOf(found, step));
  return strictest(cares) ?? stoneCare(UNKNOWN_OPEN, step);
}

/** What the flame asks of a stone: how to protect it, or to take it out. */
export type TorchAction = 'protect' | 'protectNoBoron' | 'protectSlow' | 'caution' | 'remove';

/** How the stones that may stay in are protected: boric coat for diamond; none for corundum, which boron etches; slowly for zirconia (JMK, ORH). */
const PROTECTION: Readonly<Record<string, TorchAction>> = {
  diamond: 'protect',
  ruby: 'protectNoBoron',
  sapphire: 'protectNoBoron',
  labCorundum: 'protectNoBoron',
  cubicZirconia: 'protectSlow',
};

/** The torch answer with its way of protecting the stone. */
export function torchAction(stone: StoneAsSeen): TorchAction {
  const { answer } = stoneCare(stone, 'torch');
  if (isOut(answer)) return 'remove';
  return PROTECTION[stone.species] ?? 'caution';
}

/** The ultrasonic answer; a stone that is usually safe there is so only when it is neither treated nor included. */
export function ultrasonicAllowed(stone: StoneAsSeen): 'yesUnlessTreatedOrIncluded' | 'caution' | 'no' {
  const { answer } = stoneCare(stone, 'ultrasonic');
  return isOut(answer) ? 'no' : answer === 'caution' ? 'caution' : 'yesUnlessTreatedOrIncluded';
}

/** The pickle answer; a hot piece is never quenched with any stone in it (HAM, ORH). */
export function acidPickleAllowed(stone: StoneAsSeen, isHot: boolean): 'yesWhenCool' | 'caution' | 'no' | 'noQuench' {
  if (isHot) return 'noQuench';
  const { answer } = stoneCare(stone, 'pickle');
  return isOut(answer) ? 'no' : answer === 'caution' ? 'caution' : 'yesWhenCool';
}

const isOut = (answer: CareAnswer): boolean => strictness(answer) >= strictness('remove');
const strictness = (answer: CareAnswer): number => CARE_ANSWERS.indexOf(answer);

function subjectOf(stone: StoneAsSeen): CareSubject | undefined {
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

function careOf(subject: CareSubject, step: CareStep): Care {
  const read = subject.care[step];
  return read ? { answer: read[0], basis: read[1], note: read[2] ?? '' } : familyCare(subject.family, step);
}

function familyCare(family: keyof typeof CARE_FAMILIES, step: CareStep): Care {
  return { answer: CARE_FAMILIES[family][step], basis: 'common practice', note: CARE_FAMILIES[family].words };
}

function strictest(cares: readonly Care[]): Care | undefined {
  return cares.toSorted((a, b) => strictness(b.answer) - strictness(a.answer))[0];
}
