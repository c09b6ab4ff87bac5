// Names of people and customers: sealed in the file, opened into memory at the start, so that a page never waits for a cipher.
import { entryType } from '../ledger/registry.ts';
import type { Store } from './open.ts';
import { openOne } from './shelf.ts';

export interface Directory {
  /** The words by which a person or customer is known, or undefined once they were erased. */
  nameOf(id: string): string | undefined;
  /** Everything sealed about a customer or person that could be opened, by field; the newest holds. */
  detailsOf(id: string): Readonly<Record<string, unknown>>;
  /** The customer a job's sealed link names. */
  customerOf(job: string): string | undefined;
  jobsOf(customer: string): readonly string[];
  /** Resolves once everything committed so far has been read. */
  settled(): Promise<void>;
  /** Customers whose name, telephone or e-mail holds these words; a telephone by its digits, however it was written and whatever its country's prefix. */
  search(words: string): readonly string[];
}

/** Opens every sealed value once, and those of each commit as it comes. */
export async function openDirectory(store: Store): Promise<Directory> {
  const details = new Map<string, Record<string, unknown>>();
  const customers = new Map<string, string>();
  let next = 0;

  async function readNew(): Promise<void> {
    const sql = `SELECT sealed.seq, field, subject, iv, ciphertext, leaf FROM sealed JOIN entry USING (seq) WHERE sealed.seq >= ? ORDER BY sealed.seq`;
    for (const row of await store.read(sql, [next])) {
      next = Number(row.seq) + 1;
      const opened = await openOne(store.keys, store.log, Number(row.seq), row);
      if (!opened) continue;
      const leaf = JSON.parse(new TextDecoder().decode(new Uint8Array(row.leaf as ArrayBuffer))) as {
        type: string;
        data: Record<string, unknown>;
      };
      remember(String(row.subject), leaf, String(row.field), opened.value);
    }
  }

  function remember(subject: string, leaf: { type: string; data: Record<string, unknown> }, field: string, value: unknown): void {
    const named = entryType(leaf.type).fields[field];
    if (named?.kinds.includes('customer')) customers.set(subject, String(value));
    const corrects = typeof leaf.data.field === 'string' && field === 'is' ? leaf.data.field : field;
    details.set(subject, { ...details.get(subject), [corrects]: value });
  }

  await readNew();
  let reading = Promise.resolve();
  store.onCommit(() => {
    reading = reading.then(readNew);
  });
  const wordsOf = (id: string) =>
    Object.values(details.get(id) ?? {})
      .filter((value) => typeof value === 'string')
      .join(' ')
      .toLowerCase();
  const phoneOf = (id: string) => digitsOf(String(details.get(id)?.phone ?? ''));
  const holds = (id: string, words: string) => {
    const digits = /^[\d\s()+./-]+$/.test(words) ? nationalOf(digitsOf(words)) : '';
    return wordsOf(id).includes(words.toLowerCase()) || (digits.length >= DIGITS_MIN && isSamePhone(phoneOf(id), digits));
  };
  return {
    nameOf: (id) => {
      const known = details.get(id);
      return (known?.name ?? known?.ownerName) as string | undefined;
    },
    detailsOf: (id) => details.get(id) ?? {},
    customerOf: (job) => customers.get(job),
    settled: () => reading,
    jobsOf: (customer) => [...customers].filter(([, of]) => of === customer).map(([job]) => job),
    search: (words) => [...details.keys()].filter((id) => !customers.has(id) && holds(id, words)),
  };
}

const DIGITS_MIN = 3;
const WHOLE_MIN = 7;
const digitsOf = (text: string): string => text.replace(/\D/g, '');
/** Without the zero that falls away behind a country's prefix (ITU-T E.123, memory). */
const nationalOf = (digits: string): string => digits.replace(/^0+/, '');
/** One holds the other: the last digits of a number, or a whole number with its country's prefix. */
const isSamePhone = (known: string, typed: string): boolean =>
  known.includes(typed) || (known.length >= WHOLE_MIN && typed.endsWith(nationalOf(known)));
