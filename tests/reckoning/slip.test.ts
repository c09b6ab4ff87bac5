import { describe, expect, it } from 'vitest';
import { findSlips, type SlipKind, slipsOf } from '../../src/reckoning/slip.ts';
import { type MassUnit, massNg, parseMass } from '../../src/units/mass.ts';

const worth = { uRandomG: 0.0078, factors: [] };
const written = (text: string, sign: 1 | -1, unit: MassUnit = 'g', tareNg = 0) => {
  const read = parseMass(text, unit);
  if ('problem' in read) throw new Error(text);
  return { id: text, sign, text, unit, ng: massNg(read.ng - tareNg), worth };
};
const kinds = (...found: ReturnType<typeof findSlips>[number][]) => found.map(({ kind, text, instead }) => [kind, text, instead]);

describe('the slip finder', () => {
  // Constructed: each job closes but for one plain mistake.
  it.each<[SlipKind, string, string, ReturnType<typeof written>[]]>([
    ['digits swapped', '8.24', '8.42', [written('8.24', 1), written('7.05', -1), written('1.37', -1)]],
    ['decimal place', '84.2', '8.42', [written('84.2', 1), written('7.05', -1), written('1.37', -1)]],
    ['other unit', '1.31', 'ct', [written('8.42', 1), written('8.16', -1), written('1.31', -1)]],
    [
      'counted twice',
      '1.37',
      'once',
      [written('8.42', 1), written('7.05', -1), written('1.37', -1), { ...written('1.37', -1), id: 'again' }],
    ],
    ['wrong direction', '1.37', 'out', [written('8.42', 1), written('7.05', -1), written('1.37', 1)]],
  ])('%s: %s for %s', (kind, text, instead, weighings) => {
    expect(kinds(...findSlips(weighings))).toContainEqual([kind, text, instead]);
  });
  it('tries the known trays, but not on a reading lighter than the tray', () => {
    const found = findSlips([written('8.42', 1), written('1.37', -1), written('9.20', -1)], [{ name: 'tray 3', ng: 2_150_000_000 }]);
    expect(kinds(...found)).toEqual([['tare left on', '9.20', 'tray 3']]);
  });
  it('tries the pieces of other open jobs that a hand may have held', () => {
    const found = findSlips([written('8.42', 1), written('5.17', -1)], [], [{ name: 'job 12', ng: 5_170_000_000 }]);
    expect(kinds(...found)).toContainEqual(['another piece', '5.17', 'job 12']);
  });
  it('keeps the tare off when digits were swapped on the display', () => {
    const found = findSlips([written('8.42', 1), written('10.75', -1, 'g', 2_150_000_000)]);
    expect(kinds(...found)).toContainEqual(['digits swapped', '10.75', '10.57']);
  });
  it('takes no cut, stones or stock for a piece in the hand', () => {
    const others = [{ name: 'job 12', ng: 1_370_000_000 }];
    const job = [written('8.42', 1), written('5.17', -1), { ...written('1.37', -1), isPart: true }];
    expect(kinds(...findSlips(job, [], others))).toEqual([]);
    expect(findSlips([...job.slice(0, 2), written('1.37', -1)], [], others).map(({ kind }) => kind)).toContain('another piece');
  });
  describe('a reading of a balance of 0.1 g entered as one of 0.01 g', () => {
    const step = { stepNg: massNg(10_000_000) };
    // 8.36 g shows as 8.4 on the coarser balance.
    const shown = (text: string, out: string) =>
      kinds(
        ...findSlips([
          { ...written('8.36', 1), ...step },
          { ...written(out, -1), ...step },
          { ...written(text, -1), ...step },
        ]),
      );
    it.each(['8.4', '8.40'])('is named where it was written %s and the gap is within its step', (text) => {
      expect(
        kinds(
          ...findSlips([
            { ...written('8.36', 1), ...step },
            { ...written(text, -1), ...step },
          ]),
        ),
      ).toContainEqual(['coarser balance', text, '0.1\u00a0g']);
    });
    it('is not where the reading is no round number, nor where the gap is more than its step', () => {
      expect(shown('8.41', '0.02').map(([kind]) => kind)).not.toContain('coarser balance');
      expect(shown('8.10', '0.03').map(([kind]) => kind)).not.toContain('coarser balance');
    });
    it('is named in carats too', () => {
      const carat = { stepNg: massNg(2_000_000), worth: { uRandomG: 0.001, factors: [] } };
      expect(
        kinds(
          ...findSlips([
            { ...written('1.04', 1, 'ct'), ...carat },
            { ...written('1.00', -1, 'ct'), ...carat },
          ]),
        ),
      ).toContainEqual(['coarser balance', '1.00', '0.1\u00a0ct']);
    });
  });
  it('names the piece of another job only where that stands alone', () => {
    const job = (name: string, ng: number) => ({ name, ng });
    const named = (...others: { name: string; ng: number }[]) =>
      findSlips([written('8.42', 1), written('5.17', -1)], [], others)
        .filter(({ kind }) => kind === 'another piece')
        .map(({ instead }) => instead);
    // 2·√2·0.0078 g = 0.0221 g: 5.19 g is within it, 5.20 g is not; within ten times as far, 0.221 g, no other may be.
    expect(named(job('12', 5_190_000_000))).toEqual(['12']);
    expect(named(job('13', 5_200_000_000))).toEqual([]);
    expect(named(job('12', 5_190_000_000), job('14', 5_395_000_000))).toEqual(['12']);
    expect(named(job('12', 5_190_000_000), job('14', 5_385_000_000))).toEqual([]);
  });
  it('reads carats as grams and grams as carats, and no other unit as either', () => {
    expect(kinds(...findSlips([written('8.42', 1), written('8.42', -1, 'ct')]))).toContainEqual(['other unit', '8.42', 'g']);
    const pennyweights = findSlips([written('5.41', 1), written('5.41', -1, 'dwt')]);
    expect(pennyweights.map(({ kind }) => kind)).not.toContain('other unit');
  });
  it('shifts a point either way', () => {
    expect(kinds(...findSlips([written('8.42', 1), written('0.842', -1)]))).toContainEqual(['decimal place', '0.842', '8.42']);
    expect(kinds(...findSlips([written('8.42', 1), written('84.2', -1)]))).toContainEqual(['decimal place', '84.2', '8.42']);
  });
  it('says what came in where something went out the wrong way', () => {
    expect(kinds(...findSlips([written('8.42', 1), written('1.37', -1), written('9.79', -1)]))).toContainEqual([
      'wrong direction',
      '1.37',
      'in',
    ]);
  });
  it('swaps no equal digits, and none across what is no digit', () => {
    const found = findSlips([written('5.55', 1), written('5.05', -1)]);
    expect(kinds(...found).filter(([kind, text]) => kind === 'digits swapped' && text === '5.55')).toEqual([]);
    expect(kinds(...findSlips([written('8.42', 1), written('4.82', -1)]))).toContainEqual(['digits swapped', '4.82', '8.42']);
  });
  it('is found with the dust of the work beside it, and not for more dust than is usual', () => {
    // 8.42 in, 8.36 out after 0.06 of dust, with 3 and 6 swapped: 8.63 was written.
    const written_ = [written('8.42', 1), written('8.63', -1)];
    expect(kinds(...findSlips(written_, [], [], 0.1))).toContainEqual(['digits swapped', '8.63', '8.36']);
    expect(findSlips(written_, [], [], 0.001)).toEqual([]);
  });
  it('swaps no equal digits for the sake of dust', () => {
    expect(kinds(...findSlips([written('5.55', 1), written('5.45', -1)], [], [], 0.2))).not.toContainEqual([
      'digits swapped',
      '5.55',
      '5.55',
    ]);
  });
  it('takes no reading for a tray that is as heavy as the tray', () => {
    const found = findSlips([written('5.00', 1), written('5.00', -1), written('2.15', -1)], [{ name: 'tray 3', ng: 2_150_000_000 }]);
    expect(found.filter(({ kind }) => kind === 'tare left on').map(({ text }) => text)).toEqual(['5.00']);
  });
  it('is as large as was asked, to the last nanogram', () => {
    // 8.24 for 8.42 is 0.18 g too light.
    const within = (leastG: number, mostG: number) => slipsOf(written('8.24', 1), { leastG, mostG }, [], []).map(({ kind }) => kind);
    expect(within(-0.18, -0.18)).toEqual(['digits swapped']);
    expect([within(-0.17, 0), within(-0.19, -0.181)]).toEqual([[], []]);
  });
  it('of a text that is no weight names what the hand may have done alone', () => {
    const raw = { ...written('1.37', 1), text: 'S S 1.37 g', stepNg: massNg(10_000_000) };
    expect(findSlips([written('8.42', 1), written('7.05', -1), raw]).filter(({ text }) => text === raw.text)).toMatchObject([
      { kind: 'wrong direction', instead: 'out' },
    ]);
  });
  it('looks for nothing while the job closes', () => {
    expect(findSlips([written('8.42', 1), written('8.41', -1)], [], [{ name: 'job 12', ng: 8_410_000_000 }])).toEqual([]);
  });
  it('names nothing when no single mistake explains the gap', () => {
    expect(findSlips([written('8.42', 1), written('7.11', -1)])).toEqual([]);
  });
});
