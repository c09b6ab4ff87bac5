// What the law lets a marked piece fall short by. Its figures are check rows; here are the edges of eras and articles.
import { describe, expect, it } from 'vitest';
import {
  isExemptFromKaratAssay,
  lowestLawful,
  type MarkedPiece,
  MINUS_TOLERANCES,
  ukHallmarkRequired,
  ukMinimumSolder,
} from '../../src/trade/fineness-law.ts';
import { massNg } from '../../src/units/mass.ts';

const us14: MarkedPiece = { law: 'US', metal: 'gold', markedPermille: 583.333, madeOn: '1975-06-01' };

describe('a marked piece', () => {
  it('of the US before October 1981 may lie a karat low, and seven thousandths after', () => {
    expect(lowestLawful({ ...us14, madeOn: '1981-09-30' }, 'whole')).toBeCloseTo(541.667, 2);
    expect(lowestLawful({ ...us14, madeOn: '1981-10-01' }, 'whole')).toBeCloseTo(576.333, 2);
  });

  it('of the UK or by ISO 9202 may not lie below its mark at all', () => {
    expect(lowestLawful({ law: 'UK', metal: 'gold', markedPermille: 750, madeOn: '2020-01-01' }, 'whole')).toBe(750);
    expect(lowestLawful({ law: 'ISO 9202', metal: 'gold', markedPermille: 585, madeOn: '2020-01-01' }, 'part')).toBe(585);
  });

  // 15 USC 295 as amended; the old rule for watchcases is from memory
  it('that is a watchcase may fall short by three thousandths, whole or not, and long ago too without its solder', () => {
    const watch: MarkedPiece = { ...us14, article: 'watchcase' };
    expect(lowestLawful({ ...watch, madeOn: '1990-01-01' }, 'whole')).toBeCloseTo(580.333, 3);
    expect(lowestLawful(watch, 'part')).toBeCloseTo(580.333, 3);
    expect(lowestLawful(watch, 'whole')).toBeCloseTo(541.667, 2);
  });

  it('without any minus tolerance by its law has its mark for its minimum', () => {
    for (const { law, metal } of MINUS_TOLERANCES.filter((rule) => rule.law !== 'US')) {
      expect(lowestLawful({ law, metal, markedPermille: 950, madeOn: '2020-01-01' }, 'part'), `${law} ${metal}`).toBe(950);
    }
    expect(lowestLawful({ law: 'UK', metal: 'palladium', markedPermille: 950, madeOn: '2000-01-01' }, 'part')).toBeNull();
  });

  it('has no answer where no rule was read', () => {
    expect(lowestLawful({ law: 'ISO 9202', metal: 'gold', markedPermille: 585, madeOn: '2020-01-01' }, 'whole')).toBeNull();
    expect(lowestLawful({ ...us14, metal: 'platinum' }, 'part')).toBeNull();
  });

  it('meets one rule on any day', () => {
    for (const { law, metal, articles } of MINUS_TOLERANCES) {
      for (const day of ['1950-01-01', '1981-09-30', '1981-10-01', '2026-01-01'].filter((on) => on > '2010' || metal !== 'palladium')) {
        for (const article of articles) {
          const rules = MINUS_TOLERANCES.filter(
            (rule) =>
              rule.law === law &&
              rule.metal === metal &&
              rule.articles.includes(article) &&
              (rule.from ?? '') <= day &&
              day <= (rule.until ?? '9999'),
          );
          expect(rules.length, `${law} ${metal} ${article} ${day}`).toBe(1);
        }
      }
    }
  });

  it('needs a hallmark by its metal alone', () => {
    expect(ukHallmarkRequired('gold', massNg(1_150_000_000), massNg(200_000_000))).toBe(false);
    expect(ukHallmarkRequired('gold', massNg(1_150_000_000), massNg(0))).toBe(true);
  });

  it('of white 750 may be soldered lower than yellow, and what was not read is not answered', () => {
    expect(ukMinimumSolder('gold', 750, 'white')).toBe(500);
    expect(ukMinimumSolder('gold', 750)).toBe(750);
    expect(ukMinimumSolder('gold', 585, 'white')).toBeNull();
    expect(ukMinimumSolder('platinum', 950)).toBeNull();
  });

  it('is assayed without its springs and joints', () => {
    expect(isExemptFromKaratAssay('joint')).toBe(true);
    expect(isExemptFromKaratAssay('head')).toBe(false);
  });
});
