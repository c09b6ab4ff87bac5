// What a line of a command names: its things loaded into views, and the streams its leaf must link.
import { type RefKind, SHOP_KINDS } from '../units/ids.ts';
import { streamBegun } from './apply.ts';
import type { Line, Writer } from './leaf.ts';
import type { Overlay } from './overlay.ts';
import type { AnyEntry, Views } from './registry.ts';
import { rememberedFields } from './remember.ts';
import { stateOf, type Thing } from './thing.ts';

export interface Loaded {
  readonly view: Views;
  /** The subject's stream first. */
  readonly streams: readonly [string, ...string[]];
}
export type NotLoaded = {
  readonly code: 'not_found' | 'already_begun' | 'two_jobs' | 'not_in_force';
  readonly say: string;
  readonly field: string;
};

/** Loads what the line's fields name; refuses what is not there, is there already, belongs to two jobs, or to another than the job of its form. */
export async function load(
  overlay: Overlay,
  entry: AnyEntry,
  data: Line['data'],
  writer: Writer,
  job?: string,
): Promise<Loaded | NotLoaded> {
  const view: Record<string, Views[string]> = {};
  const found = new Map<string, Thing>();
  const begun = new Set<string>();
  const streams: string[] = [];
  for (const [name, field] of Object.entries(entry.fields)) {
    if (field.role === 'tells' || data[name] === undefined) continue;
    const id = String(data[name]);
    if (field.kinds.includes('entry')) {
      const target = await overlay.entry(id);
      if (!target) return { code: 'not_found', say: NO_ENTRY, field: name };
      view[name] = await rememberedFields(overlay, target);
      streams.push(...target.leaf.links.map(({ s }) => s));
      continue;
    }
    const thing = await overlay.thing(id);
    const misnamed = whyNotNamed(name, field, thing, begun.has(id)) ?? (name === entry.subject ? null : notHere(name, thing));
    if (misnamed) return misnamed;
    if (!thing) {
      begun.add(id);
      continue;
    }
    found.set(name, thing);
    view[name] = stateOf(thing, await overlay.thing(thing.stream));
  }
  const subject = streams[0] ?? subjectStream(entry, data, found, shopOf(overlay, writer));
  const touched = touchedStreams(entry, data, found, subject);
  return (
    inTwoJobs(entry, subject, touched, job) ?? {
      view,
      streams: [subject, ...new Set([...streams, ...touched.map(({ stream }) => stream)].filter((one) => one !== subject))],
    }
  );
}

/** Somebody who is named in an entry about something else works here, for what is written of them they must answer. */
const notHere = (name: string, thing: Thing | undefined): NotLoaded | null =>
  thing?.role === 'left' || thing?.role === 'auditor'
    ? { code: 'not_in_force', say: 'They do not work at the counter or the bench. Choose somebody who does.', field: name }
    : null;

const NO_ENTRY = 'That entry is not in this ledger. Open it from the job and correct it there.';

/** Why a field may not say this: there is no such thing, or it is there already; null when it may. */
function whyNotNamed(
  name: string,
  { role, kinds }: AnyEntry['fields'][string],
  thing: Thing | undefined,
  isBegun: boolean,
): NotLoaded | null {
  const fits = thing && kinds.includes(thing.kind);
  if (role === 'names' && !fits) {
    return { code: 'not_found', say: 'There is no such thing in this ledger. Choose it from the list.', field: name };
  }
  if (!isBegun && (!thing || (role !== 'begins' && fits))) return null;
  return { code: 'already_begun', say: 'This was already begun. Open a fresh form.', field: name };
}

/** What stands in its job's stream. */
const JOB_KINDS: readonly RefKind[] = ['job', 'piece', 'stone', 'packet'];

/** What belongs to another job than the entry's subject, or than the job of the form; null where nothing does. */
function inTwoJobs(entry: AnyEntry, subject: string, touched: ReturnType<typeof touchedStreams>, job?: string): NotLoaded | null {
  const other = touched.find(({ stream, isJob }) => isJob && stream !== subject);
  if (other) return { code: 'two_jobs', say: 'This belongs to another job. Write one entry for each job.', field: other.name };
  const isOfJobs = entry.fields[entry.subject]?.kinds.some((kind) => JOB_KINDS.includes(kind));
  if (job === undefined || !isOfJobs || subject === job) return null;
  const say = 'This does not belong to the job of this form. Open its own page, and write it there.';
  return { code: 'two_jobs', say, field: entry.subject };
}

/** People, places, balances and customers are read, not linked; so is what stands sealed. */
const isLinked = (kind: RefKind) => kind !== 'shop' && kind !== 'entry' && !SHOP_KINDS.some((one) => one === kind);

function touchedStreams(entry: AnyEntry, data: Line['data'], found: ReadonlyMap<string, Thing>, subject: string) {
  return Object.entries(entry.fields).flatMap(([name, { role, kinds, sealed }]) => {
    const kind = kinds[0];
    if (role === 'tells' || sealed || !kind || data[name] === undefined || !isLinked(found.get(name)?.kind ?? kind)) return [];
    const thing = found.get(name);
    const stream = thing?.stream ?? streamBegun(kind, String(data[name]), subject);
    return [{ name, stream, isJob: !(['lot', 'stock', 'skin'] as RefKind[]).includes(thing?.kind ?? kind) }];
  });
}

function subjectStream(entry: AnyEntry, data: Line['data'], found: ReadonlyMap<string, Thing>, shop: string): string {
  const thing = found.get(entry.subject);
  if (thing) return thing.stream;
  const kind = entry.fields[entry.subject]?.kinds[0] ?? 'shop';
  return streamBegun(kind, String(data[entry.subject]), shop);
}

/** The shop's stream; in the very first command the shop has only just begun. */
function shopOf(overlay: Overlay, writer: Writer): string {
  return writer.shop ?? [...overlay.things.values()].find(({ kind }) => kind === 'shop')?.id ?? '';
}
