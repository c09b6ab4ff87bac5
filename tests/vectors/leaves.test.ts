// Golden vectors: the exact bytes of a leaf of each entry type, and its hash. Frozen by the first real record.
// A missing one is added, and none is ever overwritten, by `npm run vectors`.
import { createHash } from 'node:crypto';
import { readFileSync, writeFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { ENTRIES } from '../../src/entries/index.ts';
import { draft } from '../../src/ledger/decide.ts';
import { entryType, type Values } from '../../src/ledger/registry.ts';
import { readLeaf } from '../../src/log/leaf.ts';
import { sha256 } from '../../src/store/crypto.ts';
import { type CivilDate, instant } from '../../src/units/dates.ts';
import { day, SAMPLES, THINGS } from './samples.ts';

const FILE = new URL('leaves.json', import.meta.url);
const kept = JSON.parse(readFileSync(FILE, 'utf8')) as Record<string, unknown>;
const types = Object.keys(ENTRIES);

/** The leaf of a sample under a fixed stamp: entry 7 of a log, the third of its stream, the first and only one of its command. */
function leafOf(type: string): Uint8Array {
  let calls = 0;
  const writer = {
    ...{ log: 'lemel/AAECAwQFBgcICQoLDA0ODw/1', seq: 7, shop: THINGS.shop, at: instant(Date.UTC(2026, 11, 8, 18, 5)), alone: true, sha256 },
    today: day('2026-12-08') satisfies CivilDate,
    random: (bytes: number) => new Uint8Array(bytes).fill(++calls),
  };
  const stamp = { at: writer.at, occurredAt: instant(writer.at - 60_000), by: THINGS.owner, auth: 'pin', device: 'dev-1' } as const;
  const links = [{ s: THINGS.job, n: 2, p: THINGS.entry }] as const;
  return draft(entryType(type), SAMPLES[type as keyof typeof SAMPLES] as Values, {}, stamp, { links, part: [0, 1], command: 'form-1' }, writer).bytes;
}
const vectorOf = (type: string) => ({
  leaf: new TextDecoder().decode(leafOf(type)),
  hash: createHash('sha256').update(Uint8Array.of(0)).update(leafOf(type)).digest('base64url'),
});

if (process.env.LEMEL_ADD_VECTORS !== undefined) {
  for (const type of types) if (!Object.hasOwn(kept, type)) kept[type] = vectorOf(type);
  writeFileSync(FILE, `${JSON.stringify(kept, null, 1)}\n`);
}

describe('the leaf of an entry', () => {
  it('is kept for every type and for no other', () => {
    expect(Object.keys(kept).toSorted()).toEqual(types.toSorted());
  });
  it.each(types)('%s has the bytes and the hash that it has always had, and the verifier takes it', (type) => {
    expect(vectorOf(type)).toEqual(kept[type]);
    expect(readLeaf(leafOf(type))).toHaveProperty('leaf');
  });
});
