// What a form shows before anything is typed: its own key, what begins with it, the things it may name, the streams as they stand.
import { ulid } from 'ulid';
import type { FormState } from '../../../views/parts/field.tsx';
import type { Posted } from '../../book/codec.ts';
import type { Control } from '../../book/values.ts';
import type { Thing } from '../../ledger/thing.ts';
import { thingsInHouse } from '../../queries/jobs.ts';
import { streamSizes } from '../../queries/sizes.ts';
import { LISTED_MAX, newestOf, thingAt, thingsOfStream } from '../../queries/things.ts';
import { bagCode, type Ref, type RefKind, refFromBytes } from '../../units/ids.ts';
import { wordsFor } from '../job/words.ts';
import { type Ctx, policyFor, type Web } from '../session/context.ts';
import { balancesShown } from './balances-shown.ts';
import type { Fieldset } from './write.ts';

/** Inputs that are posted without being shown. */
export type Hidden = readonly (readonly [name: string, value: string])[];
export interface Shown {
  readonly form: FormState;
  readonly hidden: Hidden;
}

export const newRef = (web: Web, kind: Exclude<RefKind, 'bag' | 'entry'>): string => refFromBytes(kind, web.random(16));

/** A bag code that no job has had. */
export async function newBag(web: Web): Promise<Ref<'bag'>> {
  for (let length = 3; ; length = Math.min(5, length + 1)) {
    for (let tried = 0; tried < 20; tried++) {
      const code = bagCode(web.random(length), length);
      if ((await thingAt(web.store, code)) === null) return code;
    }
  }
}

interface ShowOptions {
  readonly job?: Thing;
  readonly typed?: Posted;
  readonly problems?: FormState['problems'];
  readonly asked?: string;
  /** The things a field may name, where they are fewer than all of their kind. */
  readonly named?: Readonly<Record<string, readonly Thing[]>>;
}

const FRESH: ReadonlyMap<string, readonly string[]> = new Map();

/** A form for these fields; `typed` is what was posted before, which keeps its key and what it begins. `job` narrows what may be named. */
export async function showForm(web: Web, c: Ctx, fields: Fieldset, options: ShowOptions = {}): Promise<Shown> {
  const { job, typed = FRESH, problems = [], asked } = options;
  const policy = policyFor(c);
  const key = typed.get('formKey')?.[0] || ulid(web.clock()).toLowerCase();
  // Not "form": an input of that name hides the form itself from scripts that ask the form's elements for it.
  const begun: Begun = {
    hidden: [['formKey', key]],
    things: {},
    filled: new Map(typed),
    streams: new Set([policy.shop, ...(job ? [job.id] : [])]),
  };
  for (const [name, field] of Object.entries(fields)) {
    if (field.control.kind === 'list') fillFresh(web, begun.filled, name, field.control);
    await fillRef(web, policy.shop, begun, name, field, options);
  }
  const seen = await seenStreams(web, [...begun.streams], typed);
  const balances = balancesShown(policy);
  const { filled, things } = begun;
  return {
    form: { typed: filled, problems, things, balances, tares: [...policy.tares.keys()], ...(asked === undefined ? {} : { asked }) },
    hidden: [...begun.hidden, ...seen],
  };
}

/** A form while its fields are gone through. */
interface Begun {
  readonly hidden: (readonly [string, string])[];
  readonly things: Record<string, readonly (readonly [string, string])[]>;
  readonly filled: Map<string, readonly string[]>;
  readonly streams: Set<string>;
}

/** What a field may name or begins: known from where the form stands, made for it, or offered. */
async function fillRef(web: Web, shop: string, begun: Begun, name: string, field: Fieldset[string], options: ShowOptions): Promise<void> {
  const { role, kinds, control, mayBeMissing } = field;
  const { job, typed = FRESH, named = {} } = options;
  const [kind] = kinds;
  if (role === 'tells' || control.kind !== 'ref' || !kind || kind === 'entry') return;
  const { hidden, things, filled, streams } = begun;
  if (kind === 'shop') hidden.push([name, shop]);
  else if (kind === 'job' && job && kinds.length === 1) hidden.push([name, job.id]);
  else if (role === 'begins' && !mayBeMissing)
    hidden.push([name, typed.get(name)?.[0] || (kind === 'bag' ? await newBag(web) : newRef(web, kind))]);
  else {
    const choices = named[name] ?? (role === 'begins' ? [] : await mayBeNamed(web, kinds, job));
    for (const thing of choices) streams.add(thing.stream);
    const fresh = role === 'names' || kind === 'bag' ? null : typed.get(`new.${name}`)?.[0] || newRef(web, kind);
    if (fresh !== null) hidden.push([`new.${name}`, fresh]);
    const offered = [
      ...choices.map((thing) => [thing.id, wordsFor(web, thing)] as const),
      ...(fresh === null ? [] : [[fresh, 'a new one'] as const]),
    ];
    things[name] = offered;
    if (offered.length === 1 && !mayBeMissing && !filled.has(name)) filled.set(name, [offered[0]?.[0] ?? '']);
  }
}

/** Names for the things that the rows of a list may begin. */
function fillFresh(web: Web, filled: Map<string, readonly string[]>, name: string, { of, max }: Extract<Control, { kind: 'list' }>): void {
  if (of.kind !== 'group') return;
  for (const [member, { control }] of Object.entries(of.members)) {
    if (control.kind !== 'fresh') continue;
    for (let row = 0; row < max; row++) {
      const at = `${name}.${row}.${member}`;
      if (!filled.get(at)?.[0]) filled.set(at, [newRef(web, control.of)]);
    }
  }
}

const isHere = ({ gone, role, kind, status }: Thing) =>
  !gone && role !== 'left' && status !== 'sealed' && (kind === 'job' || status !== 'closed');

/** Things of these kinds that are still here: of the job, or of the jobs in the house; of any other kind the newest; lots while they are open. */
async function mayBeNamed(web: Web, kinds: readonly RefKind[], job: Thing | undefined): Promise<readonly Thing[]> {
  const found: Thing[] = [];
  for (const kind of kinds) {
    const ofJob = ['piece', 'stone', 'packet', 'job'].includes(kind);
    const all = !ofJob
      ? (await newestOf(web.store, kind)).things.toReversed()
      : job
        ? (await jobThings(web, job.id)).filter((thing) => thing.kind === kind)
        : (await thingsInHouse(web.store, kind)).slice(-LISTED_MAX);
    found.push(...all.filter(isHere));
  }
  return found;
}

/** The things of a job, the job itself among them. */
export const jobThings = ({ store }: Web, job: string): Promise<readonly Thing[]> => thingsOfStream(store, job);

/** The count of each stream as the person sees it now; a form shown again keeps the counts it was first shown with. */
async function seenStreams(web: Web, streams: readonly string[], typed: Posted): Promise<Hidden> {
  const sizes = await streamSizes(web.store, streams);
  return streams.map((stream) => [`seen.${stream}`, typed.get(`seen.${stream}`)?.[0] ?? String(sizes.get(stream) ?? 0)] as const);
}
