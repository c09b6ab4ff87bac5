// Stories → commands: words become values by the fields' own controls, names become refs, and everything goes in through `record`, in order of time.
import { readControl, type Shop } from '../src/book/codec.ts';
import type { Field } from '../src/book/entry.ts';
import type { Control } from '../src/book/values.ts';
import type { Answer, Line } from '../src/ledger/leaf.ts';
import { type AnyEntry, entryType } from '../src/ledger/registry.ts';
import { base64url } from '../src/log/bytes.ts';
import type { Store } from '../src/store/open.ts';
import { keepPhoto } from '../src/store/photos.ts';
import { thingOf } from '../src/store/shelf.ts';
import { type Instant, instant } from '../src/units/dates.ts';
import { bagCode, type Ref, refFromBytes } from '../src/units/ids.ts';
import { massNg } from '../src/units/mass.ts';
import { formatMoney, parseMoney } from '../src/units/money.ts';
import { type Calendar, calendarAt } from './calendar.ts';
import type { Chance } from './chance.ts';
import { drawn, type Picture } from './pictures.ts';
import type { Scene, Story, Telling, Words } from './story.ts';

export const ZONE = 'Europe/London';
/** The story that names the shop's own things: people, places, balances, stock, lots, skins. Every other story may use them. */
export const SHOP_STORY = 'the shop';

export interface Stage {
  readonly store: Store;
  /** The store's own clock, moved from scene to scene. */
  readonly clock: { now: Instant };
  /** The moment at which the stories are read: nothing of them is later. */
  readonly now: Instant;
  readonly photosDir: string;
  readonly chance: Chance;
}
export interface Told {
  readonly entries: number;
  /** The ref a name of a story came to stand for; throws where the story names nothing so. */
  ref(story: string, name: string): string;
}
interface Written {
  readonly seq: number;
  readonly hash: string;
  readonly line: Line;
}
interface Scope {
  readonly stage: Stage;
  readonly calendar: Calendar;
  readonly refs: Map<string, string>;
  readonly labels: Map<string, Written>;
}

/** Tells the stories scene by scene in order of time; throws where a scene does not end as it says. */
export async function tellStories(stage: Stage, stories: readonly Story[]): Promise<Told> {
  const calendar = calendarAt(stage.now, ZONE);
  const scope: Scope = { stage, calendar, refs: new Map(), labels: new Map() };
  const scenes = stories
    .flatMap(({ name, scenes }) => scenes.map((scene, index) => ({ scene, name, index, atMs: calendar.moment(scene.when) })))
    .sort((a, b) => a.atMs - b.atMs);
  let entries = 0;
  for (const [index, { scene, name, index: its, atMs }] of scenes.entries()) {
    // A story of today is never told as of an hour to come.
    stage.clock.now = instant(Math.min(atMs, stage.now - (scenes.length - index) * 1000));
    entries += await perform(scope, name, `${name} ${its}`, scene);
  }
  return { entries, ref: (story, name) => known(scope, story, name) ?? missing(story, name) };
}

async function perform(scope: Scope, story: string, id: string, { when, by, tellings, ends }: Scene): Promise<number> {
  const { store, chance } = scope.stage;
  const shop = await shopOf(store);
  const lines: Line[] = [];
  for (const telling of tellings) lines.push(await lineOf(scope, story, shop, telling));
  const [person = '', device = ''] = by.split(' at ');
  const command = {
    id: refFromBytes('job', chance.bytes(`command ${id}`)),
    by: (known(scope, story, person) ?? missing(story, person)) as Ref<'person'>,
    device,
    seen: await streamsOf(store),
    lines,
  };
  let answer = await store.record({ ...command, auth: 'session' });
  // As at a form: the PIN or the password is typed where it is asked for.
  if (answer.answer === 'refused' && answer.code === 'pin_needed') answer = await store.record({ ...command, auth: 'pin' });
  if (answer.answer === 'refused' && answer.code === 'password_needed') answer = await store.record({ ...command, auth: 'password' });
  if (!isSo(answer, ends)) throw new Error(`${story}, ${when}: ${JSON.stringify(ends)} was told, but ${JSON.stringify(answer)}`);
  if (answer.answer !== 'written') return 0;
  for (const [index, { label }] of tellings.entries()) {
    const line = lines[index];
    if (label && line) scope.labels.set(`${story} ${label}`, { ...(await entryAt(store, answer.from + index)), line });
  }
  return answer.size;
}

const isSo = (answer: Answer, ends: Scene['ends']) =>
  answer.answer === ends.answer && (!('code' in ends) || ('code' in answer && answer.code === ends.code));

async function entryAt(store: Store, seq: number) {
  const [row] = await store.read('SELECT leaf_hash FROM entry WHERE seq = ?', [seq]);
  return { seq, hash: base64url(new Uint8Array(row?.leaf_hash as ArrayBuffer)) };
}

async function streamsOf(store: Store): Promise<Readonly<Record<string, number>>> {
  const rows = await store.read('SELECT stream, COUNT(*) AS n FROM entry_link GROUP BY stream');
  return Object.fromEntries(rows.map(({ stream, n }) => [String(stream), Number(n)]));
}

/** What reading a weight needs to know: the balances in service and the tares on the list. */
async function shopOf(store: Store): Promise<Shop> {
  const things = (await store.read("SELECT state FROM thing WHERE kind IN ('balance', 'shop')")).map(thingOf);
  const tares = things.flatMap(({ says }) => Object.entries(says).filter(([mark]) => mark.startsWith('tare:')));
  return {
    currency: 'GBP',
    zone: ZONE,
    balances: new Map(things.flatMap(({ id, balance }) => (balance ? [[id, balance] as const] : []))),
    tares: new Map(tares.map(([mark, ng]) => [mark.slice('tare:'.length), massNg(Number(ng))])),
  };
}

async function lineOf(scope: Scope, story: string, shop: Shop, { type, said }: Telling): Promise<Line> {
  const entry = entryType(type);
  if (type === 'corrected') return { type, data: await correctionOf(scope, story, shop, said) };
  return { type, data: await dataOf(scope, story, shop, entry, said) };
}

async function dataOf(scope: Scope, story: string, shop: Shop, { fields }: AnyEntry, said: Telling['said']) {
  const data: Record<string, unknown> = {};
  for (const [name, field] of Object.entries(fields)) {
    const words = said[name] ?? (field.role !== 'tells' && !field.mayBeMissing ? name : undefined);
    if (words === undefined) continue;
    data[name] =
      field.role === 'tells' ? await valueFrom(scope, story, shop, field.control, words) : refOf(scope, story, field, String(words));
  }
  return data;
}

async function correctionOf(scope: Scope, story: string, shop: Shop, said: Telling['said']) {
  const { target: label, field, is, reason } = said;
  const written = scope.labels.get(`${story} ${label}`) ?? missing(story, String(label));
  const control = entryType(written.line.type).fields[String(field)]?.control ?? missing(story, String(field));
  const [was, now] = [written.line.data[String(field)], is && (await valueFrom(scope, story, shop, control, is))];
  return { target: written.hash, seq: written.seq, field, was, is: now, reason };
}

async function valueFrom(scope: Scope, story: string, shop: Shop, control: Control, words: Words): Promise<unknown> {
  switch (control.kind) {
    case 'weight':
      return weightOf(scope, story, shop, control, String(words));
    case 'money':
      return (
        parseMoney(String(words), shop.currency) ?? missing(story, `${words} (say it like ${formatMoney({ minor: 100, currency: 'GBP' })})`)
      );
    case 'day':
      return scope.calendar.day(String(words));
    case 'file':
      return photoOf(scope.stage, words as Picture);
    case 'list':
      return Promise.all((words as readonly Words[]).map((one) => valueFrom(scope, story, shop, control.of, one)));
    case 'group': {
      const members = Object.entries(words as Readonly<Record<string, Words>>);
      const read = members.map(async ([name, one]) => {
        const member = control.members[name] ?? missing(story, name);
        return [name, await valueFrom(scope, story, shop, member.control, one)];
      });
      return Object.fromEntries(await Promise.all(read));
    }
    default:
      return words;
  }
}

/** "7.81 g on the bench balance with bag tag, again 7.81: read twice"; or "by difference", "estimated". Grams are read on the bench balance and carats on the carat balance unless another is named. */
const WEIGHT = /^([\d.]+) (g|ct)(?: (by difference|estimated))?(?: on the (.+? balance))?(?: with ([^,]+))?(?:, again ([\d.]+): (.+))?$/;
const USUAL = { g: 'bench balance', ct: 'carat balance' } as const;

function weightOf(scope: Scope, story: string, shop: Shop, control: Control, words: string): unknown {
  const [, text, unit = '', basis, named, thing, again, because] = WEIGHT.exec(words) ?? missing(story, words);
  const balance = basis ? undefined : known(scope, story, named ?? USUAL[unit as 'g' | 'ct']);
  const said = { text, unit, balance, with: thing, again, because, basis: basis && (basis === 'estimated' ? 'estimate' : 'difference') };
  const posted = Object.entries(said).flatMap(([part, value]) => (value === undefined ? [] : [[`w.${part}`, [value]] as const]));
  const read = readControl(control, new Map(posted), 'w', shop);
  return read && 'value' in read ? read.value : missing(story, `${words}: ${JSON.stringify(read)}`);
}

async function photoOf({ photosDir }: Stage, picture: Picture): Promise<string> {
  const kept = await keepPhoto(photosDir, await drawn(picture));
  if ('trouble' in kept) throw new Error(kept.say);
  return kept.hash;
}

const known = ({ refs, labels }: Scope, story: string, name: string): string | undefined =>
  refs.get(`${story} ${name}`) ?? refs.get(`${SHOP_STORY} ${name}`) ?? labels.get(`${story} ${name}`)?.hash;

function refOf(scope: Scope, story: string, { role, kinds }: Field<unknown>, name: string): string {
  const there = known(scope, story, name);
  if (there && (role !== 'begins' || scope.refs.has(`${story} ${name}`))) return there;
  const kind = kinds[0];
  if (role === 'names' || !kind || kind === 'entry') return missing(story, name);
  const { chance } = scope.stage;
  const ref = kind === 'bag' ? freshBag(scope, story) : refFromBytes(kind, chance.bytes(`${kind} ${story} ${name}`));
  scope.refs.set(`${story} ${name}`, ref);
  return ref;
}

/** There are few bag codes: one that is on another bag is thrown again. */
function freshBag({ refs, stage }: Scope, story: string): string {
  const taken = new Set(refs.values());
  for (let turn = 0; ; turn++) {
    const code = bagCode(stage.chance.bytes(`bag ${story} ${turn}`));
    if (!taken.has(code)) return code;
  }
}

function missing(story: string, name: string): never {
  throw new Error(`the story “${story}” names nothing called ${name}`);
}
