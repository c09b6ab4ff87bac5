// A correction is decided again like its entry: with what it should say standing in, in the ledger as it was before it, and all that was written
// since is looked at once more. What was refused at the time, or is refused for another reason, is not the correction's doing.
import type { Now } from '../book/entry.ts';
import { foldStream } from './apply.ts';
import { type Corrected, type Correction, readCorrected } from './corrections.ts';
import type { Kept, Stopped, Writer } from './leaf.ts';
import { load } from './load.ts';
import { type Overlay, overlayOn } from './overlay.ts';
import { checkReadings } from './plausible.ts';
import { checkFields, entryType, type Values, type Views } from './registry.ts';
import { saysNow } from './remember.ts';
import type { Thing } from './thing.ts';

type Refused = Omit<Extract<Stopped, { answer: 'refused' }>, 'answer' | 'line'>;
type Lookup = (id: string) => Promise<Thing | undefined>;

/** Why what is corrected could not have been written so, or what was written since could not; null when all of it stands. */
export async function standsIn(overlay: Overlay, correction: Correction, now: Now, writer: Writer): Promise<Stopped | null> {
  const { of, field, is } = correction;
  const target = await overlay.entry(of);
  if (!target) throw new Error(`a correction of ${of}, which is not in this ledger`);
  const { occurredAt: _, ...said } = await saysNow(overlay, target);
  const corrected = field === 'occurredAt' ? said : { ...said, [field]: is };
  const invalid = checkFields(entryType(target.leaf.type), corrected);
  if (invalid) return { answer: 'refused', line: 0, code: 'invalid', say: invalid.say, field };
  const stream = target.leaf.links[0].s;
  const leaves = await overlay.leaves(stream);
  const before = await lookupBefore(overlay, target, leaves);
  const own = await newlyRefused(before, target, said, corrected, now, writer);
  if (own) return { answer: 'refused', line: 0, ...own, field };
  const odd = await oddNow(before, target, field, corrected, writer);
  if (odd) return odd;
  return (await overlay.thing(stream))?.kind === 'job' ? laterFalls(overlay, leaves, target, correction, now, writer) : null;
}

/** The ledger as it was before an entry: of its job what came before it; of everything else what there is now, but what it began. */
async function lookupBefore(overlay: Overlay, target: Kept, leaves: readonly Kept[]): Promise<Overlay> {
  const stream = target.leaf.links[0].s;
  const isJob = (await overlay.thing(stream))?.kind === 'job';
  const earlier = () => readCorrected(leaves).filter(({ seq }) => seq < target.seq);
  const things = isJob ? await foldStream(overlay, stream, earlier()) : null;
  return lookingUp(overlay, async (id) => {
    const thing = await overlay.thing(id);
    if (things && thing?.stream === stream) return things.get(id);
    return thing && thing.begun === target.seq ? undefined : thing;
  });
}

const lookingUp = (overlay: Overlay, thing: Lookup): Overlay => overlayOn({ ...overlay, thing });

/** A weight that could not have been on that balance, or is not what was expected then. */
async function oddNow(before: Overlay, target: Kept, field: string, data: Values, writer: Writer): Promise<Stopped | null> {
  const entry = entryType(target.leaf.type);
  const loaded = await load(before, entry, data, writer);
  const odd = 'code' in loaded ? null : await checkReadings(before, entry, data, loaded.view, target.leaf, writer.shop);
  return odd?.field?.split('.')[0] === field ? odd : null;
}

/** The refusal of an entry as it would say now, where it says otherwise than of what stood there. */
async function newlyRefused(shelf: Overlay, kept: Kept, was: Values, is: Values, now: Now, writer: Writer): Promise<Refused | null> {
  const refusal = await refusalOf(shelf, kept, is, now, writer);
  if (!refusal) return null;
  return (await refusalOf(shelf, kept, was, now, writer))?.code === refusal.code ? null : refusal;
}

async function refusalOf(shelf: Overlay, { leaf }: Kept, data: Values, now: Now, writer: Writer): Promise<Refused | null> {
  const entry = entryType(leaf.type);
  const loaded = await load(shelf, entry, data, writer);
  if ('code' in loaded) return loaded;
  const refusal = entry.decide(loaded.view as Views, data, { ...leaf, today: now.today, alone: now.alone });
  return refusal && { code: refusal.refused as Refused['code'], say: refusal.say };
}

/** The first entry of the job since then that could be written as things stand and could not with the correction. */
async function laterFalls(
  overlay: Overlay,
  leaves: readonly Kept[],
  target: Kept,
  correction: Correction,
  now: Now,
  writer: Writer,
): Promise<Stopped | null> {
  const stream = target.leaf.links[0].s;
  const refusals = async (entries: readonly Corrected[]) => {
    const found = new Map<number, Refused>();
    await foldStream(overlay, stream, entries, async (entry, things) => {
      if (entry.seq <= target.seq || namesAnEntry(entry)) return;
      const shelf = lookingUp(overlay, async (id) => {
        const thing = await overlay.thing(id);
        return thing?.stream === stream ? things.get(id) : thing;
      });
      const refusal = await refusalOf(shelf, entry, { ...entry.opened, ...entry.data }, now, writer);
      if (refusal) found.set(entry.seq, refusal);
    });
    return found;
  };
  const asItStands = await refusals(readCorrected(leaves));
  for (const [seq, refusal] of await refusals(readCorrected(leaves, correction))) {
    if (asItStands.get(seq)?.code === refusal.code) continue;
    const say = `Entry ${seq} could not have been written then: ${refusal.say} Correct that entry first, or look at this one again.`;
    return { answer: 'refused', line: 0, code: 'would_not_stand', say, field: correction.field };
  }
  return null;
}

const namesAnEntry = ({ leaf }: Kept): boolean => Object.values(entryType(leaf.type).fields).some(({ kinds }) => kinds.includes('entry'));
