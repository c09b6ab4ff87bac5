// A command → leaves, over an overlay: all its lines or none. Pure but for what it looks up through the shelf.
import type { Now, Stamp } from '../book/entry.ts';
import type { StaffRole } from '../book/facts.ts';
import { NO_TERMS } from '../book/terms.ts';
import { base64url } from '../log/bytes.ts';
import { type Json, writable } from '../log/canonical.ts';
import { GENESIS, type Link, leafTrouble, sealedDigest } from '../log/leaf.ts';
import { leafHash } from '../log/merkle.ts';
import { beginsShop, isStaff, isWithdrawn } from './allowed.ts';
import { applyLeaf } from './apply.ts';
import { mayOf, notAllowed } from './authority.ts';
import type { Answer, Command, Kept, Leaf, Line, Stopped, Writer } from './leaf.ts';
import { type Loaded, load } from './load.ts';
import { accept, type Overlay, overlayOn } from './overlay.ts';
import { checkReadings } from './plausible.ts';
import { type AnyEntry, checkFields, entryType, type Views } from './registry.ts';
import { standsIn } from './stand-in.ts';

/** A leaf about to be written: its bytes, and the sealed values with their own salts. */
export interface Drafted {
  readonly kept: Kept;
  readonly bytes: Uint8Array;
  readonly sealed: readonly { readonly field: string; readonly salt: string; readonly value: unknown }[];
}
export type Decided =
  | { readonly drafted: readonly Drafted[] }
  | { readonly answer: Exclude<Answer, { answer: 'written' | 'form reused' }> };

/** Decides every line in order; a refusal, a question or a conflict drops the whole command and leaves the overlay as it was. */
export async function decideCommand(overlay: Overlay, command: Command, writer: Writer): Promise<Decided> {
  const fork = overlayOn(overlay);
  const conflict = (await findConflict(fork, command)) ?? (await underOtherTerms(fork, command, writer));
  if (conflict) return { answer: conflict };
  const drafted: Drafted[] = [];
  for (const [index, line] of command.lines.entries()) {
    const outcome = await decideLine(fork, command, line, index, { ...writer, seq: writer.seq + index });
    if ('answer' in outcome) return { answer: outcome };
    drafted.push(outcome);
  }
  accept(overlay, fork);
  return { drafted };
}

/** Compares, once and before the first line, each subject's stream with what the person saw. */
async function findConflict(overlay: Overlay, command: Command): Promise<Extract<Answer, { answer: 'conflict' | 'refused' }> | null> {
  for (const [index, line] of command.lines.entries()) {
    const entry = entryType(line.type);
    const subject = entry.fields[entry.subject];
    const thing = await overlay.thing(String(line.data[entry.subject]));
    if (entry.commutes || subject?.role !== 'names' || !thing) continue;
    const size = (await overlay.head(thing.stream))?.size ?? 0;
    const seen = command.seen[thing.stream];
    // More than there is was seen on another ledger, or on this one before an older copy was put back.
    if (seen === undefined || seen > size)
      return { answer: 'refused', line: index, code: 'invalid', say: 'This form has lost what it was written on. Open it again.' };
    if (seen === size) continue;
    const leaves = await overlay.leaves(thing.stream);
    return { answer: 'conflict', stream: thing.stream, since: leaves.slice(seen).map(({ seq }) => seq) };
  }
  return null;
}

/** The terms that were read back are those in force, or nothing is agreed under them. */
async function underOtherTerms(overlay: Overlay, { terms }: Command, { shop }: Writer): Promise<Stopped | null> {
  const inForce = (shop === undefined ? undefined : await overlay.thing(shop))?.says.terms ?? NO_TERMS;
  if (terms === undefined || terms === inForce) return null;
  const say = 'The shop’s terms were changed since these were read back. Read out the ones in force now, and agree on them.';
  return { answer: 'refused', line: 0, code: 'terms_changed', say, field: 'terms' };
}

async function decideLine(overlay: Overlay, command: Command, line: Line, index: number, writer: Writer): Promise<Drafted | Stopped> {
  const entry = entryType(line.type);
  const refused = (code: Extract<Stopped, { answer: 'refused' }>['code'], say: string, field?: string): Stopped =>
    field === undefined ? { answer: 'refused', line: index, code, say } : { answer: 'refused', line: index, code, say, field };
  const invalid = checkFields(entry, line.data);
  if (invalid) return refused(invalid.refused, invalid.say, invalid.field);
  if (beginsShop(entry) !== (writer.seq === 0)) {
    return refused('out_of_place', 'A ledger begins with its shop, once. Open the ledger there is, or begin a new one.');
  }
  const author = await authorOf(overlay, entry, command, line, writer);
  if ('code' in author) return refused(author.code, author.say);
  const stamp = stampOf(command, line, writer);
  if (stamp.occurredAt > stamp.at + 60_000) {
    return refused('in_the_future', 'That time has not come yet. Give the time it happened.', 'occurredAt');
  }
  const loaded = await load(overlay, entry, line.data, writer, command.job);
  if ('code' in loaded) return refused(loaded.code, loaded.say, loaded.field);
  const now: Now = { ...stamp, today: writer.today, alone: writer.alone };
  const missing = notAllowed(mayOf(entry, loaded.view, line.data, command), author.role, command.auth);
  if (missing) return refused(missing.code, missing.say, missing.field);
  const refusal = entry.decide(loaded.view, line.data, now);
  if (refusal) return refused(refusal.refused as never, refusal.say, refusal.field);
  const doubt = await checkReadings(overlay, entry, line.data, loaded.view, stamp, writer.shop);
  if (doubt) return { ...doubt, line: index };
  for (const one of entry.facts(line.data, stamp)) {
    const stopped = one.fact === 'correction' && (await standsIn(overlay, one, now, writer));
    if (stopped) return { ...stopped, line: index };
  }
  const placed = { links: await linksTo(overlay, loaded.streams), part: [index, command.lines.length], command: command.id } as const;
  const drafted = draft(entry, line.data, loaded.view, stamp, placed, writer);
  await applyLeaf(overlay, drafted.kept);
  return drafted;
}

/** In what role whoever writes it works here, at a screen in use and before a witness who does too, or why they may write nothing. */
async function authorOf(
  overlay: Overlay,
  entry: AnyEntry,
  { by, witness = by, device }: Command,
  line: Line,
  { shop }: Writer,
): Promise<{ readonly role: StaffRole } | { readonly code: 'not_staff' | 'screen_withdrawn'; readonly say: string }> {
  const isOwner = (person: string) => beginsShop(entry) && Object.values(line.data).includes(person);
  const roleOf = async (person: string) => (isOwner(person) ? 'owner' : (await overlay.thing(person))?.role);
  const role = await roleOf(by);
  if (!isStaff(role) || !isStaff(await roleOf(witness)))
    return { code: 'not_staff', say: 'Sign in as somebody who works here to write this.' };
  if (shop !== undefined && isWithdrawn(await overlay.thing(shop), device))
    return { code: 'screen_withdrawn', say: 'This screen was withdrawn. Write it at another.' };
  return { role };
}

function stampOf(command: Command, line: Line, writer: Writer): Stamp {
  const { by, auth, device, witness } = command;
  const stamp = { at: writer.at, occurredAt: line.occurredAt ?? writer.at, by, auth, device };
  return witness === undefined ? stamp : { ...stamp, witness };
}

/** Where an entry stands: in its streams, and in its command. */
export interface Placed {
  readonly links: Leaf['links'];
  readonly part: Leaf['part'];
  readonly command: string;
}

/** Builds an entry's leaf: its exact bytes and hash, and what is kept out of it. A leaf that the verifier would refuse is a bug. */
export function draft(entry: AnyEntry, data: Line['data'], view: Views, stamp: Stamp, placed: Placed, writer: Writer): Drafted {
  const { open, sealed, digests } = sealFields(entry, data, view, writer);
  const { log, seq } = writer;
  const salt = base64url(writer.random(16));
  const members = { v: 1, log, seq, type: entry.type, ver: entry.version, ...placed, salt, data: open } as const;
  const leaf: Leaf = Object.keys(digests).length === 0 ? { ...stamp, ...members } : { ...stamp, ...members, sealed: digests };
  const bytes = writable(leaf);
  if (!(bytes instanceof Uint8Array)) throw new Error(`leaf is not canonical: ${JSON.stringify(bytes)}`);
  // What may be written is within what a verifier reads, so its members alone are left to ask about.
  const wrong = leafTrouble(leaf as unknown as Json);
  if (wrong) throw new Error(`the verifier would refuse this leaf: ${wrong.say}`);
  const hash = base64url(leafHash(writer.sha256, bytes));
  const opened = Object.fromEntries(sealed.map(({ field, value }) => [field, value]));
  return { kept: { seq, hash, leaf, opened }, bytes, sealed };
}

async function linksTo(overlay: Overlay, [subject, ...others]: Loaded['streams']): Promise<Leaf['links']> {
  return [await linkTo(overlay, subject), ...(await Promise.all(others.map((s) => linkTo(overlay, s))))];
}

async function linkTo(overlay: Overlay, s: string): Promise<Link> {
  const head = await overlay.head(s);
  return { s, n: head?.size ?? 0, p: head?.hash ?? GENESIS };
}

function sealFields(entry: AnyEntry, data: Line['data'], view: Views, writer: Writer) {
  const open: Record<string, Json> = {};
  const digests: Record<string, string> = {};
  const sealed: { field: string; salt: string; value: unknown }[] = [];
  for (const [field, value] of Object.entries(data)) {
    if (value === undefined) continue;
    if (!isSealed(entry, field, data, view)) {
      open[field] = value as Json;
      continue;
    }
    const salt = base64url(writer.random(16));
    digests[field] = sealedDigest(writer.sha256, salt, field, value as Json);
    sealed.push({ field, salt, value });
  }
  return { open, sealed, digests };
}

/** A correction's was and is stay sealed where the field they correct is sealed. */
function isSealed(entry: AnyEntry, name: string, data: Line['data'], view: Views): boolean {
  const seal = entry.fields[name]?.sealed ?? null;
  if (seal !== 'as its target') return seal !== null;
  return Object.values(view).some(
    (state) => state?.kind === 'entry' && state.fields.some((field) => field.name === data.field && field.sealed !== null),
  );
}
