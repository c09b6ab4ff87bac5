// A hostile import: every kind of bad line is refused with its number, and the empty ledger stays empty.
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { base64url } from '../../src/log/bytes.ts';
import { jcs } from '../../src/log/canonical.ts';
import type { Store } from '../../src/store/open.ts';
import { BadImport, exportLines, importLines } from '../../src/store/transfer.ts';
import { type GoodLedger, goodLedger } from './good-ledger.ts';

let good: GoodLedger;
let lines: readonly string[];
let target: Store;
let dir: string;
beforeAll(async () => {
  good = await goodLedger();
  const store = await good.open(good.copy());
  const all: string[] = [];
  for await (const one of exportLines(store.read, store.log)) all.push(one);
  lines = all;
  await good.tidy();
});
beforeEach(async () => {
  dir = mkdtempSync(join(tmpdir(), 'lemel-'));
  target = await good.open(dir);
});
afterEach(async () => {
  await good.tidy();
  rmSync(dir, { recursive: true });
});
afterAll(() => good.remove());

async function* each(all: readonly string[]) {
  yield* all;
}
const at = (kind: string) => lines.findIndex((one) => one.startsWith(`{"kind":"${kind}"`));
const replaced = (index: number, by: string) => lines.map((one, n) => (n === index ? by : one));
/** The leaf on line `index` with other members, still canonical. */
const releafed = (index: number, change: (leaf: Record<string, unknown>) => void) => {
  const leaf = JSON.parse(lines[index] ?? '') as Record<string, unknown>;
  change(leaf);
  return replaced(index, jcs(leaf as never));
};
const row = (kind: string, change: (row: Record<string, unknown>) => void, index = at(kind)) => {
  const said = JSON.parse(lines[index] ?? '') as Record<string, unknown>;
  change(said);
  return replaced(index, JSON.stringify(said));
};

const HOSTILE: readonly (readonly [string, () => readonly string[]])[] = [
  ['nothing at all', () => []],
  ['no head', () => lines.slice(1)],
  ['a head of another version', () => replaced(0, '{"kind":"ledger","version":2,"log":"lemel/x/1"}')],
  ['the head of another ledger', () => replaced(0, '{"kind":"ledger","version":1,"log":"lemel/x/1"}')],
  ['a second head', () => [...lines, lines[0] ?? '']],
  ['a line that is no JSON', () => replaced(4, 'entry')],
  ['a line that is null', () => replaced(4, 'null')],
  ['a line of a kind nobody knows', () => [...lines, '{"kind":"thing"}']],
  ['a line whose kind is a name of JavaScript’s', () => [...lines, '{"kind":"__proto__"}', '{"kind":"constructor"}']],
  ['a leaf left out', () => lines.filter((_one, n) => n !== 4)],
  ['a leaf doubled', () => lines.flatMap((one, n) => (n === 4 ? [one, one] : [one]))],
  ['two leaves changed over', () => lines.map((one, n) => (n === 8 ? (lines[9] ?? '') : n === 9 ? (lines[8] ?? '') : one))],
  ['the last leaves left out', () => lines.filter((_one, n) => n < 10 || n > good.size)],
  ['a leaf with a member in it', () => releafed(3, (leaf) => Object.assign(leaf, { extra: 1 }))],
  ['a leaf of an unknown type', () => releafed(3, (leaf) => Object.assign(leaf, { type: 'gold_made' }))],
  ['a leaf of a later version', () => releafed(3, (leaf) => Object.assign(leaf, { ver: 9 }))],
  ['a leaf whose data are of another form', () => releafed(3, (leaf) => Object.assign(leaf, { data: { balance: 5 } }))],
  ['a leaf with a word changed', () => releafed(9, (leaf) => Object.assign(leaf, { device: 'another' }))],
  ['white space in a leaf', () => replaced(4, ` ${lines[4]}`)],
  ['a byte order mark', () => replaced(0, `\ufeff${lines[0]}`)],
  ['no key', () => lines.filter((one) => !one.startsWith('{"kind":"signing_key"'))],
  ['a key that is none', () => row('signing_key', (said) => Object.assign(said, { vkey: 'key' }))],
  ['a signature that does not fit', () => row('checkpoint', (said) => Object.assign(said, { signature: base64url(new Uint8Array(64)) }))],
  ['a signature too short', () => row('checkpoint', (said) => Object.assign(said, { signature: 'AAAA' }))],
  ['a signature that is a number', () => row('checkpoint', (said) => Object.assign(said, { signature: 5 }))],
  ['a size that is a text', () => row('checkpoint', (said) => Object.assign(said, { size: 'many' }))],
  ['a size that is no whole number', () => row('checkpoint', (said) => Object.assign(said, { size: 4.5 }))],
  [
    'a checkpoint of more than there is',
    () => [...lines, (lines[at('checkpoint')] ?? '').replace(/"size":\d+/, '"size":9007199254740991')],
  ],
  ['checkpoints in no order', () => [...lines, lines[at('checkpoint')] ?? '']],
  ['a sealed value of no entry', () => row('sealed', (said) => Object.assign(said, { seq: 999 }))],
  ['a sealed value doubled', () => [...lines, lines[at('sealed')] ?? '']],
  ['a sealed value without its iv', () => row('sealed', (said) => delete said.iv)],
];

describe('an import', () => {
  it.each(HOSTILE)('of %s is refused in a sentence', async (_what, hostile) => {
    const fault = await importLines(target.file, target.keys, each(hostile())).then(
      () => null,
      (error: unknown) => error,
    );
    expect(fault).toBeInstanceOf(BadImport);
    expect((fault as Error).message).toMatch(/\.$/);
    const [left] = await target.read(
      'SELECT (SELECT COUNT(*) FROM entry) + (SELECT COUNT(*) FROM thing) + (SELECT COUNT(*) FROM sealed) AS n',
    );
    expect(Number(left?.n)).toBe(0);
  });

  it('of a good export is taken whole, and a second one is refused', async () => {
    expect(await importLines(target.file, target.keys, each(lines))).toBe(good.size);
    await expect(importLines(target.file, target.keys, each(lines))).rejects.toBeInstanceOf(BadImport);
  });
});
