// How a story is told: who does what and when, in the trade's words. Things have names instead of refs, weights are text, days are counted from today.
// A field that must be filled in with a thing and is left out is called by its own name: the job, the piece, the bag.
import type { AskCode, EntryName, FieldsOf, RefusalCode } from '../src/entries/index.ts';
import type { FrameAsk, FrameRefusal } from '../src/ledger/leaf.ts';
import type { Picture } from './pictures.ts';

/** What is said of one field: a name, a text, a count, a weight ("8.64 g", "0.412 ct on the carat balance"), an amount, a day, a picture. */
export type Words = string | number | true | Picture | readonly Words[] | { readonly [member: string]: Words };
type Saying<T extends EntryName> = { readonly [N in keyof FieldsOf<T>]?: Words | undefined };
/** One entry as a story tells it; a label lets a later correction find it. */
export interface Telling {
  readonly type: EntryName;
  readonly said: Readonly<Record<string, Words | undefined>>;
  readonly label?: string;
}
export type Outcome =
  | { readonly answer: 'written' }
  | { readonly answer: 'refused'; readonly code: RefusalCode | FrameRefusal }
  | { readonly answer: 'asked'; readonly code: AskCode | FrameAsk };
/** One command: all its entries at one moment, by one person on one device ("Priya at the counter"), and what must come of it. */
export interface Scene {
  readonly when: string;
  readonly by: string;
  readonly tellings: readonly Telling[];
  readonly ends: Outcome;
}
export interface Story {
  readonly name: string;
  readonly scenes: readonly Scene[];
}

export const story = (name: string, ...scenes: readonly Scene[]): Story => ({ name, scenes });

/** An entry of that type, its fields named as the entry names them. */
export const tell = <const T extends EntryName>(type: T, said: Saying<T> = {}): Telling => ({ type, said });

/** The same entry, under a label. */
export const as = (label: string, telling: Telling): Telling => ({ ...telling, label });

/** What an earlier labelled entry should have said. */
export const correct = (label: string, field: string, is: Words, reason: string): Telling => ({
  type: 'corrected',
  said: { target: label, field, is, reason },
});

/** What is written at that moment. */
export const at = (when: string, by: string, ...tellings: readonly Telling[]): Scene => ({
  ...{ when, by, tellings },
  ends: { answer: 'written' },
});

/** What the ledger refuses, and the code it gives; nothing of it is written. */
export const refused = (code: RefusalCode | FrameRefusal, scene: Scene): Scene => ({ ...scene, ends: { answer: 'refused', code } });

/** What the ledger asks about; nothing of it is written. */
export const asked = (code: AskCode | FrameAsk, scene: Scene): Scene => ({ ...scene, ends: { answer: 'asked', code } });

interface TakingIn {
  readonly customer: Saying<'customer_met'> & { readonly name: string };
  readonly opened?: Saying<'job_opened'>;
  readonly piece: Saying<'piece_received'>;
  /** What is seen and read between receiving and agreeing: settings, marks, the value. */
  readonly seen?: readonly Telling[];
  readonly work: Saying<'work_agreed'>;
}

/** A piece taken in over the counter: met, opened, received, seen and agreed, with the terms of most jobs unless others are given. */
export const takesIn = ({ customer, opened, piece, seen = [], work }: TakingIn): readonly Telling[] => [
  tell('customer_met', customer),
  tell('job_opened', { customer: 'customer', broughtBy: 'customer', owner: 'customer', channel: 'counter', ...opened }),
  tell('piece_received', piece),
  ...seen,
  tell('work_agreed', { priceKind: 'fixed', dust: 'shop', cutMetal: 'customer', oldParts: 'customer', ...TERMS, ...work }),
];

const TERMS = { terms: '2026-1', agreedBy: 'signature' } as const;

/** A piece counted out to its customer, signed for, and its job closed. */
export const goesHome = (returned: Saying<'piece_returned'>): readonly Telling[] => [
  tell('piece_returned', { to: 'customer', shown: 'the collection slip', signed: 'signature', ...returned }),
  tell('job_closed'),
];
