// Struck marks. Every mark met is a check row; here are the ways of writing them, and what must never be read.

import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { PLATING_MARKS } from '../../src/trade/mark-table.ts';
import type { Mark } from '../../src/trade/mark-text.ts';
import { readMark } from '../../src/trade/marks.ts';

interface Row {
  readonly input: Mark;
  readonly expected: { readonly words: string };
}
const rows = (JSON.parse(readFileSync(join(import.meta.dirname, '../reference/marks.json'), 'utf8')) as { rows: readonly Row[] }).rows;
const read = (mark: string, country?: string, era?: string) => {
  const { metal, permille } = readMark({ mark, ...(country ? { country } : {}), ...(era ? { era } : {}) });
  return [metal, permille];
};

describe('a mark', () => {
  it.each(['R.G.P.', 'r.g.p.', ' RGP '])('%j is read as RGP', (mark) => {
    expect(readMark({ mark })).toEqual(readMark({ mark: 'RGP' }));
  });

  it.each(['.750', '0.750', '750', ' 750 ', 'scales 750', '750 crown'])('%j is gold of 750', (mark) => {
    expect(read(mark)).toEqual(['gold', 750]);
  });

  it.each([
    ['585KP', undefined, undefined, 'gold', 585],
    ['10K', 'US', undefined, 'gold', 416.7],
    ['22K', 'US', undefined, 'gold', 916.7],
    ['K10', 'JP', undefined, 'gold', 416],
    ['14CT', 'GB', undefined, 'gold', 585],
    ['12 .5', 'GB', undefined, 'gold', 500],
    ['72', 'RU', '-1927', 'gold', 750],
    ['91', 'RU', '1900', 'silver', 947.9],
    ['15', 'DE', '-1888', 'silver', 937.5],
    ['10', 'BR', undefined, 'silver', 833],
    ['10 dinheiros', undefined, undefined, 'silver', 833],
    ['PLATINUM', 'US', undefined, 'platinum', 950],
    ['PLATINUM', 'GB', '-1975', 'platinum', null],
    ['Pd 999', undefined, undefined, 'palladium', 999],
    ['Sterling Silver', undefined, undefined, 'silver', 925],
    ['K18/PT900', 'JP', undefined, 'gold and platinum', null],
    ['500', undefined, undefined, null, 500],
    ['500', 'GB', undefined, null, 500],
    ['dog head', 'FR', undefined, 'platinum', null],
  ] as const)('%s of %s, %s, is %s of %s', (mark, country, era, metal, permille) => {
    expect(read(mark, country, era)).toEqual([metal, permille]);
  });

  it.each([['XYZ'], [''], ['960'], ['1927'], ['25K'], ['0K'], ['56', 'RU', '1950-'], ['14', 'DE', '1900-']])(
    '%s %s %s is not known, and said so',
    (mark, country?: string, era?: string) => {
      expect(read(mark, country, era)).toEqual([null, null]);
    },
  );

  it('of plating wins over any karat or number beside it: the layer is never the piece', () => {
    const letters = [
      'GF',
      'GFX',
      'RGP',
      'RG',
      'GP',
      'GEP',
      'GE',
      'HGE',
      'HGP',
      'HEG',
      'EP',
      'EPNS',
      'EPBM',
      'ROLLED',
      'OVERLAY',
      'GOLD FILLED',
    ];
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 24 }), fc.constantFrom('K', 'KT', 'CT', 'C'), fc.constantFrom(...letters), (n, of, plating) => {
        for (const mark of [`${n}${of} ${plating}`, `${plating} ${n}${of}`, `1/20 ${n}${of} ${plating}`, `${n}${of}${plating}`]) {
          const { metal, permille } = readMark({ mark });
          expect(metal, mark).toMatch(/^plated (gold|silver)$/);
          expect(permille, mark).toBeNull();
        }
      }),
    );
    for (const { words } of PLATING_MARKS) expect(words).toMatch(/not solid|no solid|treat as silver/);
  });

  it('in karats and in its number claims what arithmetic says', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 24 }), (n) => {
        expect(readMark({ mark: `${n}K`, country: 'US' }).permille).toBeCloseTo((n * 1000) / 24, 1);
      }),
    );
  });

  it('of any scribble is read without a fault and never beyond pure', () => {
    fc.assert(
      fc.property(fc.string(), fc.constantFrom('GB', 'US', 'JP', 'RU', 'DE', 'PT'), (mark, country) => {
        const { permille } = readMark({ mark, country });
        expect(permille === null || (permille > 0 && permille <= 1000)).toBe(true);
      }),
    );
  });

  it('is said in the words of the trade in its country', () => {
    const told = rows.filter(({ input, expected }) => readMark(input).words === expected.words);
    expect(told.length / rows.length).toBeGreaterThan(0.9);
  });
});
