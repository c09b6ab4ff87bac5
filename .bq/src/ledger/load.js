// What a line of a command names: its things loaded into views, and the streams its leaf must link.
import { SHOP_KINDS } from '../units/ids.js';
import { streamBegun } from './apply.js';
import { rememberedFields } from './remember.js';
import { stateOf } from './thing.js';
/** Loads what the line's fields name; refuses what is not there, is there already, or belongs to two jobs. */
export async function load(overlay, entry, data, writer) {
  const view = {};
  const found = new Map();
  const begun = new Set();
  const streams = [];
  for (const [name, field] of Object.entries(entry.fields)) {
    if (field.role === 'tells' || data[name] === undefined) continue;
    const id = String(data[name]);
    if (field.kinds.includes('entry')) {
      const target = await overlay.entry(id);
      if (!target)
        return { code: 'not_found', say: 'That entry is not in this ledger. Open it from the job and correct it there.', field: name };
      view[name] = await rememberedFields(overlay, target);
      streams.push(...target.leaf.links.map(({ s }) => s));
      continue;
    }
    const thing = await overlay.thing(id);
    const fits = thing && field.kinds.includes(thing.kind);
    if (field.role === 'names' && !fits) {
      return { code: 'not_found', say: 'There is no such thing in this ledger. Choose it from the list.', field: name };
    }
    if (begun.has(id) || (thing && (field.role === 'begins' || !fits))) {
      return { code: 'already_begun', say: 'This was already begun. Open a fresh form.', field: name };
    }
    if (!thing) {
      begun.add(id);
      continue;
    }
    found.set(name, thing);
    view[name] = stateOf(thing, await overlay.thing(thing.stream));
  }
  const subject = streams[0] ?? subjectStream(entry, data, found, shopOf(overlay, writer));
  const touched = touchedStreams(entry, data, found, subject);
  const other = touched.find(({ stream, isJob }) => isJob && stream !== subject);
  if (other) return { code: 'two_jobs', say: 'This belongs to another job. Write one entry for each job.', field: other.name };
  return { view, streams: [...new Set([subject, ...streams, ...touched.map(({ stream }) => stream)])] };
}
/** People, places, balances and customers are read, not linked; so is what stands sealed. */
const isLinked = (kind) => kind !== 'shop' && kind !== 'entry' && !SHOP_KINDS.some((one) => one === kind);
function touchedStreams(entry, data, found, subject) {
  return Object.entries(entry.fields).flatMap(([name, { role, kinds, sealed }]) => {
    const kind = kinds[0];
    if (role === 'tells' || sealed || !kind || data[name] === undefined || !isLinked(found.get(name)?.kind ?? kind)) return [];
    const thing = found.get(name);
    const stream = thing?.stream ?? streamBegun(kind, String(data[name]), subject);
    return [{ name, stream, isJob: !['lot', 'stock', 'skin'].includes(thing?.kind ?? kind) }];
  });
}
function subjectStream(entry, data, found, shop) {
  const thing = found.get(entry.subject);
  if (thing) return thing.stream;
  const kind = entry.fields[entry.subject]?.kinds[0] ?? 'shop';
  return streamBegun(kind, String(data[entry.subject]), shop);
}
/** The shop's stream; in the very first command the shop has only just begun. */
function shopOf(overlay, writer) {
  return writer.shop ?? [...overlay.things.values()].find(({ kind }) => kind === 'shop')?.id ?? '';
}
