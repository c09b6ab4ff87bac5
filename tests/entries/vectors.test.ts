// Golden vectors: the facts and words of a shipped entry type stay for ever.
// A missing one is added, and none is ever overwritten, by `npm run vectors`.
import { readFileSync, writeFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Fields } from '../../src/book/entry.ts';
import { nameOf } from '../vectors/samples.ts';
import { type Any, sampleOf, stamp, table } from './views.ts';

const FILE = new URL('../vectors/entries.json', import.meta.url);
const kept = JSON.parse(readFileSync(FILE, 'utf8')) as Record<string, unknown>;

/** Version, data, and the facts and words of its open part, as they stand in JSON. */
function vectorOf({ type, version, fields, facts, say }: Any): unknown {
  const data = sampleOf(type);
  const open = Object.fromEntries(
    Object.entries(data).filter(([name]) => [null, 'as its target'].includes((fields as Fields)[name]?.sealed ?? null)),
  );
  return JSON.parse(JSON.stringify({ version, data, facts: facts(open, stamp), say: say(open, nameOf) }));
}

if (process.env.LEMEL_ADD_VECTORS !== undefined) {
  for (const [type, entry] of table) if (!Object.hasOwn(kept, type)) kept[type] = vectorOf(entry);
  writeFileSync(FILE, `${JSON.stringify(kept, null, 1)}\n`);
}

describe('golden vectors', () => {
  it('are kept for every entry type and for no other', () => {
    expect(Object.keys(kept).toSorted()).toEqual(table.map(([type]) => type).toSorted());
  });
  it.each(table)('%s gives the facts and words that it has always given', (type, entry) => {
    expect(vectorOf(entry)).toEqual(kept[type]);
  });
});
