// Names of people and customers: sealed in the file, opened into memory at the start, so that a page never waits for a cipher.
import { AsyncResource } from 'node:async_hooks';
import { openFinder } from './find-names.js';
import { openOne } from './shelf.js';
import { turnOfTheLoop } from './sqlite.js';

/** So many are opened at a time, and everybody else has a turn between. */
const CHUNK = 1000;
/** Of so many who were met or joined, in the order of their places: the value that was sealed last of each field. */
const SAID_LAST = `WITH some AS (SELECT n, id FROM thing WHERE kind = ? AND status IS NULL AND n > ? ORDER BY n LIMIT ${CHUNK})
  SELECT some.n, sealed.seq, field, subject, iv, ciphertext FROM some CROSS JOIN sealed WHERE subject = some.id AND field <> 'was' AND (field = 'is' OR sealed.seq =
  (SELECT MAX(later.seq) FROM sealed AS later WHERE later.subject = sealed.subject AND later.field = sealed.field)) ORDER BY some.n, sealed.seq`;
const SEALED_FROM = `SELECT sealed.seq, field, subject, iv, ciphertext, kind FROM sealed JOIN thing ON id = subject
  WHERE sealed.seq >= ? AND field <> 'was' ORDER BY sealed.seq LIMIT ${CHUNK}`;
const CORRECTED =
  "SELECT seq, json_extract(CAST(leaf AS TEXT), '$.data.field') AS field FROM entry WHERE seq IN (SELECT value FROM json_each(?))";
/** Opens what was said last of everybody, and what each commit adds as it comes. */
export async function openDirectory(store) {
  const known = { finder: openFinder(), links: openLinks(), details: new Map() };
  const [head] = await store.read('SELECT COALESCE(MAX(seq) + 1, 0) AS size FROM entry');
  let next = Number(head?.size);
  for (const kind of ['person', 'customer']) await readAll(store, known, kind);
  for (let after = ''; after !== null; await turnOfTheLoop()) after = known.links.add(await store.keys.wrappedAfter(after, CHUNK));
  /** In no page's own moment, which may be older than the commit that is read here. */
  const readNew = AsyncResource.bind(async () => {
    for (;;) {
      const rows = await store.read(SEALED_FROM, [next]);
      await learn(
        store,
        known,
        rows.filter(({ kind }) => kind === 'person' || kind === 'customer'),
      );
      for (const { kind, subject } of rows) if (kind === 'job') known.links.add(await store.keys.wrappingOf(String(subject)));
      const last = rows.at(-1);
      // An entry's values may go on in the next rows, so the last entry of a full page is read again.
      if (last) next = rows.length < CHUNK ? Number(last.seq) + 1 : Number(last.seq);
      if (rows.length < CHUNK) return;
    }
  });
  let reading = Promise.resolve();
  const readOn = () => {
    reading = reading.catch(() => undefined).then(readNew);
    reading.catch(() => undefined);
    return reading;
  };
  store.onCommit(() => void readOn());
  return {
    nameOf: (id) => known.details.get(id)?.name ?? known.details.get(id)?.ownerName,
    customerOf: known.links.customerOf,
    jobsOf: known.links.jobsOf,
    settled: () => reading.catch(readOn),
    search: known.finder.search,
  };
}
async function readAll(store, known, kind) {
  for (let after = 0; ; await turnOfTheLoop()) {
    const rows = await store.read(SAID_LAST, [kind, after]);
    if (rows.length === 0) return;
    await learn(store, known, rows);
    after = Number(rows.at(-1)?.n);
  }
}
/** Opens these values in their order: the last of a field holds, and a correction stands for the field that it names. */
async function learn({ read, keys, log }, { finder, details }, rows) {
  const own = await keys.keysOf(rows.map(({ subject }) => String(subject)));
  const corrections = rows.filter(({ field }) => field === 'is').map(({ seq }) => seq);
  const corrected = corrections.length === 0 ? [] : await read(CORRECTED, [JSON.stringify(corrections)]);
  const fieldOf = new Map(corrected.map(({ seq, field }) => [seq, String(field)]));
  for (const row of rows) {
    const subject = String(row.subject);
    const found = await openOne({ keyOf: async (id) => own.get(id) ?? null }, log, Number(row.seq), row);
    if (typeof found?.value !== 'string') continue;
    const said = { ...details.get(subject), [fieldOf.get(row.seq) ?? String(row.field)]: found.value };
    details.set(subject, said);
    finder.know(subject, Object.values(said).join(' '), said.phone ?? '');
  }
}
/** Which customer's key wraps a job's: the link between the two, and the only one that is not in the ledger. */
function openLinks() {
  const customers = new Map();
  const jobs = new Map();
  return {
    /** Answers the last job of these, null where there is none. */
    add(links) {
      for (const [job, customer] of links) {
        if (customers.get(job) === customer) continue;
        customers.set(job, customer);
        const own = jobs.get(customer);
        if (own) own.push(job);
        else jobs.set(customer, [job]);
      }
      return links.at(-1)?.[0] ?? null;
    },
    customerOf: (job) => customers.get(job),
    jobsOf: (customer) => jobs.get(customer) ?? [],
  };
}
