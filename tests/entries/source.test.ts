// What the text of every entry's file must hold.
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';

const SOURCE = new URL('../../src/entries/', import.meta.url);
const files = readdirSync(SOURCE).filter((name) => name !== 'index.ts');
const sourceOf = (file: string) => readFileSync(new URL(file, SOURCE), 'utf8');

const SHARED: Readonly<Record<string, string>> = {
  pieceIsGone: 'piece_is_gone',
  workNotAgreed: 'work_not_agreed',
  jobIsClosed: 'job_is_closed',
  onHold: 'on_hold',
  notOneStone: 'one_stone_is_one',
  thingIsGone: 'thing_is_gone',
  lotIsSealed: 'lot_is_sealed',
  promiseIsPast: 'promise_is_past',
};

describe('the file of an entry', () => {
  it.each(files)('%s exports its entry type and nothing else', (file) => {
    const exported = sourceOf(file).match(/^export .*/gm) ?? [];
    expect(exported).toHaveLength(1);
    expect(exported[0]).toMatch(/^export const \w+ = defineEntry\(\{$/);
  });

  it.each(files)('%s has a test for every code that it refuses or asks with', (name) => {
    const file = name.slice(0, -3);
    const codes = [...sourceOf(name).matchAll(/\b(?:refuse|ask)\('(\w+)'|exactlyOne\([^)]*?, '(\w+)'/g)].map((m) => m[1] ?? m[2]);
    const shared = [
      ...sourceOf(name).matchAll(/\b(pieceIsGone|workNotAgreed|jobIsClosed|onHold|notOneStone|thingIsGone|lotIsSealed|promiseIsPast)\(/g),
    ];
    const needed = [...codes, ...shared.map((m) => SHARED[m[1] ?? ''])];
    if (needed.length === 0) return;
    const test = readFileSync(new URL(`./${file}.test.ts`, import.meta.url), 'utf8');
    for (const code of needed) expect(test).toContain(`'${code}'`);
  });
});
