import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { base64, utf8 } from '../../src/log/bytes.ts';
import { checkRecord, proveRecord } from '../../src/log/merkle.ts';
import { formatProof, formatTilePath, parseProof, parseTilePath } from '../../src/log/proof.ts';
import { sha256, toHex } from './crypto.ts';
import { fullTree } from './trees.ts';

const leaves = Array.from({ length: 11 }, (_, i) => utf8(`leaf ${i}`));
const { root, read } = fullTree(leaves);
const proof = { index: 4, hashes: proveRecord(sha256, 4, 11, read), checkpoint: 'origin\n11\nroot\n\n\u2014 name AAAA\n' };
const text = formatProof(proof);
const code = (outcome: object): unknown => ('refused' in outcome ? outcome.refused : 'accepted');

describe('a proof as text', () => {
  it('is read back and still proves', () => {
    const parsed = parseProof(text);
    if ('refused' in parsed) throw new Error(parsed.refused);
    expect(parsed.checkpoint).toBe(proof.checkpoint);
    const claim = { index: parsed.index, size: 11, leafHash: read(0, 4), root, proof: parsed.hashes };
    expect(checkRecord(sha256, claim)).toBeNull();
  });
  it('keeps its extra data, and has none where none was given', () => {
    const extra = Uint8Array.of(7, 8, 9);
    const said = { index: 4, hashes: proof.hashes.map(toHex), checkpoint: proof.checkpoint };
    const readBack = (of: string) => {
      const parsed = parseProof(of);
      return 'refused' in parsed ? parsed : { ...parsed, hashes: parsed.hashes.map(toHex) };
    };
    expect(readBack(formatProof({ ...proof, extra }))).toEqual({ ...said, extra });
    expect(readBack(text)).toStrictEqual(said);
  });
  it.each([
    ['bad_index', 'c2sp.org/tlog-proof@v1\n\nx'],
    ['bad_index', 'c2sp.org/tlog-proof@v1\nextra AAAA\n\nx'],
    ['not_proof', `\n\n${text}`],
    ['not_proof', text.replace('@v1', '@v2')],
    ['not_proof', text.replaceAll('\n', '\r\n')],
    ['not_proof', `c2sp.org/tlog-proof@v1\nindex 0\n`],
    ['not_proof', `c2sp.org/tlog-proof@v1\nindex 0\n\n`],
    ['bad_extra', text.replace('index', 'extra TR==\nindex')],
    ['bad_index', text.replace('index 4', 'index 04')],
    ['bad_index', text.replace('index 4', 'index 18446744073709551615')],
    ['bad_index', text.replace('index 4', '4')],
    ['bad_index', text.replace('index 4', 'index 4\r')],
    ['bad_hash', text.replace('\n\n', `\n${base64(new Uint8Array(31))}\n\n`)],
    ['bad_hash', text.replace('index 4\n', 'index 4\nextra AAAA\n')],
    ['bad_hash', text.replace('=\n', '\n')],
  ])('is refused: %s', (refused, changed) => expect(code(parseProof(changed))).toBe(refused));
});

describe('the path of a tile', () => {
  it('is read back', () => {
    const tiles = fc
      .record({
        height: fc.integer({ min: 1, max: 30 }),
        level: fc.nat(60),
        index: fc.maxSafeNat(),
        share: fc.double({ min: 0, max: 1, noNaN: true }),
      })
      .map(({ height, level, index, share }) => ({ height, level, index, width: 1 + Math.floor(share * (2 ** height - 1)) }));
    fc.assert(
      fc.property(tiles, (tile) => {
        expect(parseTilePath(formatTilePath(tile))).toEqual(tile);
      }),
    );
  });
  it('that is full has no width of its own', () => {
    expect(parseTilePath('tile/8/0/001')).toEqual({ height: 8, level: 0, index: 1, width: 256 });
    expect(parseTilePath('tile/8/0/001.p/255')).toEqual({ height: 8, level: 0, index: 1, width: 255 });
    expect(parseTilePath('tile/30/0/000')).toMatchObject({ height: 30 });
    expect(parseTilePath('tile/1/0/000')).toMatchObject({ height: 1 });
  });
  it.each([
    'tile/8/0/x999/x999/x999/x999/x999/999',
    'xtile/8/0/001',
    'tile/8/0/001x',
    'tile/8/0/1',
    'tile/8/0/0001',
    'tile/08/0/001',
    'tile/8/0/x000/001',
    'tile/8/0/001.p/256',
    'tile/8/0/001.p/0',
    'tile/31/0/001',
    'tile/0/0/001',
    'tile/8/0/001/',
  ])('is refused: %s', (path) => expect(code(parseTilePath(path))).toBe('not_tile'));
});
