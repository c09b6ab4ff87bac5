// What the bench reads of the weights of a stone: never that it is the same stone.
import { describe, expect, it } from 'vitest';
import type { StoneVerdict } from '../../src/reckoning/stone-agreement.ts';
import { benchPapers, benchStone, foundWords } from '../../src/reckoning/stone-words.ts';
import { massNg } from '../../src/units/mass.ts';

const ct = (carats: number) => massNg(Math.round(carats * 2e8));
const says = (verdict: StoneVerdict, alsoShare: number | null = null) =>
  benchStone(ct(1.013), ct(1.014), ct(0.001), { verdict, differenceG: 0, uG: 1, en: 0, z: 0, p: 1 }, alsoShare).replaceAll('\u00a0', ' ');

describe('two weights of a stone', () => {
  it('are read first, each to the step', () => {
    expect(says('does not agree')).toBe('1.013 ct, then 1.014 ct: the two weights do not agree.');
    expect(says('cannot tell')).toMatch(/: such weighings are too coarse for so small a weight, and cannot tell\.$/);
    expect(says('weigh again')).toMatch(/: weigh again, clean and dry, before more is said\.$/);
  });
  it('that agree say how many other stones of the size would agree too', () => {
    expect(says('agrees', 0.034)).toMatch(/the two weights agree; about 3 of 100 other stones of that size would agree too\.$/);
    expect(says('agrees', 0.005)).toContain('; about 1 of 100');
    expect(says('agrees', 0.004)).toContain('; fewer than 1 of 100');
    expect(says('agrees')).toMatch(/the two weights agree\. One stone changed for another of its size would not show\.$/);
  });
});

describe('the papers of stones that are out', () => {
  it('can be mixed up where there are two', () => {
    expect(benchPapers([], [])).toBeNull();
    expect(benchPapers(['centre'], [])).toBeNull();
    expect(benchPapers([], ['centre'])).toBeNull();
    expect(benchPapers(['centre', 'left'], [])).toBe(
      'If the papers were mixed up, these weights would tell which stone is which: centre, left.',
    );
    const apart = 'apart: draw or photograph them.';
    expect(benchPapers([], ['left', 'right'])).toBe(`If the papers were mixed up, these weights could not tell left, right ${apart}`);
    expect(benchPapers(['centre'], ['left', 'right'])).toBe(
      `If the papers were mixed up, these weights could not tell left, right ${apart} They would tell centre.`,
    );
  });
});

describe('a stone or piece without a label', () => {
  const counts = { could: 1, cannot: 2, unknown: 0 };
  it('could be one of those that are here, is never said to be it, and is told what that is worth', () => {
    expect(foundWords('stone', '1.20 ct', counts, true, 0.034)).toEqual([
      '1.20 ct: of 3 stones and packets that are out it could be 1, and cannot be 2. Every other is too far off by weight or size.',
      'About 3 of 100 other stones of that size would weigh as much: look at the drawing and the photographs before a label goes on.',
    ]);
    expect(foundWords('piece', '4.12 g', { could: 0, cannot: 0, unknown: 2 }, false, null)).toEqual([
      '4.12 g: of 2 pieces that are here it could be none that was weighed. 2 were not weighed and cannot be left out.',
      'That a weight fits does not say whose it is: look at its marks, its size and its photographs before a label goes on.',
    ]);
    expect(foundWords('stone', '1.20 ct', { could: 0, cannot: 0, unknown: 0 }, false, 0.5)).toEqual([
      '1.20 ct: there are no stones and packets that are out.',
    ]);
    expect(foundWords('stone', '1.20 ct', counts, false, 0.004)[1]).toContain('Fewer than 1 of 100');
  });
});
