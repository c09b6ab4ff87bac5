// Hand-made views and stamps: what an entry would see of the things its sample names.
import type { Data, Doubt, EntryType, Fields, Now, Refusal, Stamp, View } from '../../src/book/entry.ts';
import type { Remembered, States } from '../../src/book/holding.ts';
import { anyStaff } from '../../src/book/may.ts';
import { ENTRIES, type EntryName } from '../../src/entries/index.ts';
import { type CivilDate, instant } from '../../src/units/dates.ts';
import type { RefKind } from '../../src/units/ids.ts';
import { type MassNg, massNg } from '../../src/units/mass.ts';
import { KINDS, SAMPLES, THINGS } from '../vectors/samples.ts';

export const stamp: Stamp = {
  at: instant(Date.UTC(2026, 11, 8, 18, 5)),
  occurredAt: instant(Date.UTC(2026, 11, 8, 18, 4)),
  by: THINGS.owner,
  auth: 'session',
  device: 'dev-1',
};
export const now: Now = { ...stamp, witness: THINGS.setter, today: '2026-12-08' as CivilDate, alone: true };

const g = (grams: number): { readonly ng: MassNg } => ({ ng: massNg(Math.round(grams * 1_000) * 1_000_000) });
const held = { balance: g(5.17), expected: g(5.17), holder: THINGS.owner, offeredTo: null, holds: [], says: {}, gone: false } as const;
type Over<K extends keyof States> = Partial<States[K]>;
const counted = { stonesIn: 3, stonesOut: 0, jobStatus: 'agreed' } as const;

export const job = (over: Over<'job'> = {}): States['job'] => ({
  kind: 'job',
  id: THINGS.job,
  says: {},
  status: 'agreed',
  cutMetal: 'shop',
  dust: 'shop',
  holder: THINGS.owner,
  offeredTo: null,
  holds: [],
  piecesIn: 0,
  stonesOut: 0,
  ...over,
});
export const piece = (over: Over<'piece'> = {}): States['piece'] => ({
  kind: 'piece',
  id: THINGS.ring,
  ...held,
  ...counted,
  owner: 'customer',
  ...over,
});
export const stone = (over: Over<'stone'> = {}): States['stone'] => ({
  kind: 'stone',
  id: THINGS.sapphire,
  ...held,
  loose: true,
  jobStatus: 'agreed',
  ...over,
});
export const packet = (over: Over<'packet'> = {}): States['packet'] => ({
  kind: 'packet',
  id: THINGS.melee,
  ...held,
  stonesIn: 11,
  jobStatus: 'agreed',
  ...over,
});
export const lot = (over: Over<'lot'> = {}): States['lot'] => ({
  kind: 'lot',
  id: THINGS.lot,
  ...held,
  status: 'open',
  metal: 'gold-750',
  ...over,
});
export const stock = (over: Over<'stock'> = {}): States['stock'] => ({
  kind: 'stock',
  id: THINGS.stock,
  ...held,
  metal: 'gold-750',
  ...over,
});
export const skin = (over: Over<'skin'> = {}): States['skin'] => ({ kind: 'skin', id: THINGS.skin, ...held, metal: 'gold-750', ...over });
/** A part of an entry that says `now` and takes whatever `takes` lets in. */
export const part = (name: string, says: unknown, over: Partial<Remembered> = {}): Remembered => ({
  name,
  correctable: true,
  sealed: null,
  says: (value) => JSON.stringify(value) === JSON.stringify(says),
  takes: () => true,
  ...over,
});
export const entry = (over: Over<'entry'> = {}): States['entry'] => ({
  kind: 'entry',
  seq: 41,
  at: stamp.at,
  type: 'piece_received',
  by: THINGS.owner,
  may: anyStaff,
  afterHandBack: false,
  fields: [part('weight', SAMPLES.corrected.was)],
  ...over,
});
const balance: States['balance'] = {
  kind: 'balance',
  id: THINGS.balance,
  says: {},
  unit: 'g',
  ranges: [{ maxNg: g(320).ng, stepNg: massNg(10_000_000) }],
};

const VIEWS: { readonly [K in RefKind]: () => States[K] } = {
  shop: () => ({ kind: 'shop', id: THINGS.shop, says: {} }),
  person: () => ({ kind: 'person', id: THINGS.setter, says: {}, role: 'bench' }),
  customer: () => ({ kind: 'customer', id: THINGS.customer, says: {} }),
  place: () => ({ kind: 'place', id: THINGS.safe, says: {} }),
  bag: () => ({ kind: 'bag', id: THINGS.bag, says: {} }),
  balance: () => balance,
  job,
  piece,
  stone,
  packet,
  lot,
  stock,
  skin,
  entry,
};

/** The kind of a thing of the samples. */
export function kindOf(id: unknown): RefKind | undefined {
  const found = Object.entries(THINGS).find(([, ref]) => ref === id)?.[0];
  return found === undefined ? undefined : KINDS[found as keyof typeof KINDS];
}

/** An entry type with its own types erased, as generic checks need it. */
// biome-ignore lint/suspicious/noExplicitAny: the table speaks of every type at once
export type Any = EntryType<string, any, string, string>;
export const table = Object.entries(ENTRIES) as unknown as readonly (readonly [EntryName, Any])[];
export const sampleOf = (type: string) => SAMPLES[type as EntryName] as Readonly<Record<string, unknown>>;

/** The views of what a sample names; what begins, or may begin, is not there yet. */
function viewsOf({ fields, type }: Any): Record<string, unknown> {
  const views: Record<string, unknown> = {};
  for (const [name, { role }] of Object.entries(fields as Fields)) {
    const kind = kindOf(sampleOf(type)[name]);
    if (role === 'names' && kind) views[name] = VIEWS[kind]();
  }
  return views;
}

type Changed<T> = { readonly [K in keyof T]?: T[K] | undefined };
const without = (data: object): object => Object.fromEntries(Object.entries(data).filter(([, value]) => value !== undefined));

/** Decides the entry's sample with its usual views, each changed as said (undefined leaves out): the code, or null when it goes in. */
export function deciding<T extends string, F extends Fields, C extends string, A extends string>(of: EntryType<T, F, C, A>) {
  const views = viewsOf(of as unknown as Any);
  const sample = sampleOf(of.type);
  return (view: Changed<View<F>> = {}, data: Changed<Data<F>> = {}, at: Partial<Now> = {}): C | null => {
    const answer = of.decide({ ...views, ...view } as View<F>, without({ ...sample, ...data }) as Data<F>, { ...now, ...at });
    return (answer as Refusal<C> | null)?.refused ?? null;
  };
}

/** What the entry asks about its sample with its usual views, each changed as said: the code, or null. */
export function asking<T extends string, F extends Fields, C extends string, A extends string>(of: EntryType<T, F, C, A>) {
  const views = viewsOf(of as unknown as Any);
  const sample = sampleOf(of.type);
  return (view: Changed<View<F>> = {}, data: Changed<Data<F>> = {}): A | null => {
    const answer = of.doubt?.({ ...views, ...view } as View<F>, without({ ...sample, ...data }) as Data<F>);
    return (answer as Doubt<A> | null | undefined)?.asks ?? null;
  };
}
