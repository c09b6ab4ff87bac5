// Unit words and conversions, against a general units library (mathjs) and, where it is installed, GNU units.
import { spawnSync } from 'node:child_process';
import fc from 'fast-check';
import { all, create } from 'mathjs';
import { describe, expect, it } from 'vitest';
import { convertMass, inUnit, massOf, NAMED_UNITS, readUnit, type UnitName } from '../../src/units/mass-units.ts';

/** The command of GNU units; it need not be there. */
const GNU_UNITS = 'units';
const names = Object.keys(NAMED_UNITS) as UnitName[];

describe('a unit word is read', () => {
  it.each([
    ['g', 'gram'],
    ['Grams', 'gram'],
    ['gm.', 'gram'],
    ['ct', 'carat'],
    ['carats', 'carat'],
    ['points', 'point'],
    ['DWT', 'pennyweight'],
    ['pwt', 'pennyweight'],
    ['oz t', 'troyOunce'],
    ['troy ounces', 'troyOunce'],
    ['ozt', 'troyOunce'],
    ['grains', 'grain'],
    ['momme', 'momme'],
    ['old carat', 'caratPre1907International'],
  ])('%s is %s', (word, unit) => {
    expect(readUnit(word)).toEqual({ unit });
  });

  it.each([
    ['gr', ['grain', 'gram']],
    ['oz', ['troyOunce', 'ounceAvoirdupois']],
    ['tola', ['tola', 'newTola']],
    ['pearl grain', ['pearlGrainMetric', 'pearlGrainUKhistoric']],
    ['tael', ['taelHongKong', 'taelHongKongGold', 'taelTaiwan', 'taelChina']],
  ])('%s is refused with its choices', (word, choices) => {
    expect(readUnit(word)).toMatchObject({ problem: 'ambiguous', choices });
  });

  it.each([
    ['ppt', 'not a mass'],
    ['karat', 'not a mass'],
    ['K', 'not a mass'],
    ['stone', 'unknown'],
    ['', 'unknown'],
  ])('%s is refused as %s', (word, problem) => {
    expect(readUnit(word)).toMatchObject({ problem });
  });

  it('never reads one word as two units', () => {
    const words = names.flatMap((name) => NAMED_UNITS[name].spelled.split(' ')).filter((word) => word !== '');
    expect(new Set(words).size).toBe(words.length);
    for (const word of words) expect(readUnit(word)).toHaveProperty('unit');
  });

  it('offers choices that differ', () => {
    for (const word of ['gr', 'oz', 'lb', 'tola', 'pearl grain', 'tael']) {
      const read = readUnit(word);
      const sizes = 'choices' in read ? read.choices.map((name) => NAMED_UNITS[name].ng) : [];
      expect(new Set(sizes).size).toBe(sizes.length);
      expect(sizes.length).toBeGreaterThan(1);
    }
  });
});

const math = create(all ?? {}, { number: 'BigNumber', precision: 40 });
// The grain, ounce and pound are the library's own; the rest are built on them as NIST HB 44 App. C and SP 811 define them.
const DEFINED = {
  dwt: '24 grain',
  ozt: '480 grain',
  lbt: '5760 grain',
  tola: '180 grain',
  oldpearlgrain: '0.8 grain',
  metriccarat: '0.2 gram',
  caratpoint: '0.002 gram',
  mommeweight: '3.75 gram',
};
math.createUnit(DEFINED);
const IN_MATHJS = {
  milligram: 'mg',
  gram: 'g',
  kilogram: 'kg',
  grain: 'grain',
  ounceAvoirdupois: 'ounce',
  poundAvoirdupois: 'poundmass',
  pennyweight: 'dwt',
  troyOunce: 'ozt',
  troyPound: 'lbt',
  tola: 'tola',
  pearlGrainUKhistoric: 'oldpearlgrain',
  carat: 'metriccarat',
  point: 'caratpoint',
  momme: 'mommeweight',
} as const satisfies Partial<Record<UnitName, string>>;
const shared = Object.keys(IN_MATHJS) as (keyof typeof IN_MATHJS)[];

describe('a mass is converted', () => {
  it('as a general units library converts it, every pair both ways', () => {
    for (const from of shared) {
      for (const to of shared) {
        const theirs = math.unit(math.bignumber('12.34'), IN_MATHJS[from]).toNumeric(IN_MATHJS[to]);
        expect(Number(convertMass('12.34', from, to, 18)) / Number(theirs), `${from} to ${to}`).toBeCloseTo(1, 12);
      }
    }
  });

  it('as GNU units converts it, where that is installed', () => {
    const asked = [
      ['pennyweight', 'pennyweight'],
      ['troyOunce', 'troyounce'],
      ['troyPound', 'troypound'],
      ['grain', 'grain'],
      ['carat', 'carat'],
      ['momme', 'momme'],
      ['ounceAvoirdupois', 'ounce'],
    ] as const;
    for (const [ours, theirs] of asked) {
      const { status, stdout } = spawnSync(GNU_UNITS, ['-t', '-o', '%.15g', `12.34 ${theirs}`, 'gram'], { encoding: 'utf8' });
      if (status === null) return console.info('GNU units is not installed: not compared with it');
      expect(Number(convertMass('12.34', ours, 'gram', 15)) / Number(stdout), theirs).toBeCloseTo(1, 12);
    }
  });

  it('there and back without loss', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 1e9 }), fc.constantFrom(...names), fc.constantFrom(...names), (n, from, to) => {
        const text = (n / 1000).toFixed(3);
        expect(convertMass(convertMass(text, from, to, 24), to, from, 3)).toBe(text);
      }),
    );
  });

  it('of which the words say the size', () => {
    for (const { ng, words } of Object.values(NAMED_UNITS)) {
      const [, figure, of] = /([\d.]+) (g|mg|ct)\b/.exec(words) ?? [];
      const unit = ({ g: 'gram', mg: 'milligram', ct: 'carat' } as const)[of ?? ''];
      if (figure && unit) expect(massOf(figure, unit), words).toBe(ng);
    }
  });

  it('to whole nanograms exactly, for every whole number of every unit', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 9000 }), fc.constantFrom(...names), (n, name) => {
        expect(massOf(String(n), name)).toBe(n * NAMED_UNITS[name].ng);
        expect(inUnit(massOf(String(n), name), name)).toBe(n);
      }),
    );
  });

  it('not as three printed mistakes have it', () => {
    expect(convertMass('1', 'carat', 'grain', 4)).toBe('3.0865'); // printed 3 1/16 = 3.0625
    expect(convertMass('1', 'pennyweight', 'gram', 4)).toBe('1.5552'); // printed 24 grams
    expect(convertMass('1', 'carat', 'gram', 4)).toBe('0.2000'); // printed 115 gram
  });

  it('only from a plain decimal', () => {
    for (const text of ['', '-1', '1e3', '1,5', ' 1']) expect(() => convertMass(text, 'gram', 'carat', 2)).toThrow(RangeError);
  });
});
