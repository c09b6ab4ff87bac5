// Every figure says where it was read: the ids resolve, and none is kept that nothing cites.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { SOURCES } from '../../src/trade/sources.ts';

const here = import.meta.dirname;
const kept = JSON.parse(readFileSync(join(here, '../reference/sources.json'), 'utf8')) as Readonly<Record<string, object>>;
const folder = join(here, '../../src/trade');
const text = readdirSync(folder)
  .filter((name) => name !== 'sources.ts')
  .map((name) => readFileSync(join(folder, name), 'utf8'))
  .join('\n');

describe('a source', () => {
  it.each(Object.entries(SOURCES))('%s is as it was recorded, and is cited', (id, source) => {
    expect(kept[id]).toMatchObject(source);
    expect(new RegExp(`(?<![A-Za-z0-9])${id}(?![A-Za-z0-9])`).test(text)).toBe(true);
  });
});
