// When a caution is due, and that each says where it comes from. The Act's own cases are check rows.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { CAUTIONS, USUAL_CAUTION } from '../../src/trade/caution-table.ts';
import { type Addition, showsAdditionCaution, ukAdditionGate, ukCoatingGate } from '../../src/trade/cautions.ts';
import { massNg } from '../../src/units/mass.ts';

const ring: Addition = {
  isHallmarked: true,
  isNewWare: false,
  isCharacterUnaltered: true,
  articleMetal: 'gold',
  articlePermille: 750,
  beforeNg: massNg(4_200_000_000),
  addedMetal: 'gold',
  addedPermille: 750,
  addedNg: massNg(180_000_000),
};
const adding = (grams: number): Addition => ({ ...ring, addedNg: massNg(Math.round(grams * 1e9)) });

describe('metal added to a hallmarked piece', () => {
  it('on an everyday sizing or re-tip shows no caution', () => {
    expect(showsAdditionCaution(ring, false)).toBe(false);
    expect(showsAdditionCaution(adding(0.89), false)).toBe(false);
  });

  it('shows it from a tenth below the limit on, and not where a consent is on file', () => {
    expect(showsAdditionCaution(adding(0.9), false)).toBe(true);
    expect(showsAdditionCaution(adding(1.2), false)).toBe(true);
    expect(showsAdditionCaution(adding(1.2), true)).toBe(false);
  });

  it('never shows it on a piece without a hallmark', () => {
    expect(showsAdditionCaution({ ...adding(3), isHallmarked: false }, false)).toBe(false);
  });

  it.each([
    ['new ware', { isNewWare: true }],
    ['another character', { isCharacterUnaltered: false }],
    ['another metal', { addedMetal: 'platinum' }],
    ['a lower standard', { addedPermille: 749 }],
  ] as const)('asks for a consent for %s, however little', (_, change) => {
    expect(ukAdditionGate({ ...ring, ...change }).gate).toBe('assay-office-consent');
  });

  it('asks for palladium, which the text read does not name', () => {
    expect(ukAdditionGate({ ...ring, articleMetal: 'palladium', addedMetal: 'palladium' })).toEqual({
      gate: 'assay-office-consent',
      limitNg: null,
    });
  });

  it('once refused is not let through by adding more', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 3_000 }),
        fc.integer({ min: 1, max: 3_000 }),
        fc.integer({ min: 1, max: 9_000 }),
        (a, b, before) => {
          const gate = (mg: number) => ukAdditionGate({ ...adding(mg / 1000), beforeNg: massNg(before * 1_000_000) }).gate;
          if (gate(Math.max(a, b)) === 'exempt') expect(gate(Math.min(a, b))).toBe('exempt');
        },
      ),
    );
  });
});

describe('a coat on a hallmarked piece', () => {
  const coat = { articleMetal: 'silver', articlePermille: 925, coat: 'gold', coatPermille: 750, thickestMicrometres: 2 } as const;

  it('of gold on silver to two micrometres is named by the Act', () => {
    expect(ukCoatingGate(coat)).toBe('exempt');
  });

  it.each([
    ['thicker', { thickestMicrometres: 2.1 }],
    ['of rhodium', { coat: 'rhodium', coatPermille: 999 }],
    ['of silver on gold', { articleMetal: 'gold', articlePermille: 750, coat: 'silver', coatPermille: 999 }],
    ['of gold below any standard', { coatPermille: 333 }],
  ] as const)('%s is not', (_, change) => {
    expect(ukCoatingGate({ ...coat, ...change })).toBe('assay-office-consent');
  });
});

describe('every caution', () => {
  it('says when, what, where from and how it was read', () => {
    for (const [id, caution] of Object.entries(CAUTIONS)) {
      for (const part of [caution.showWhen, caution.text, caution.source, caution.status]) expect(part.trim(), id).not.toBe('');
      expect(id).toMatch(/^[a-z]+(-[a-z]+)*$/);
    }
  });

  it('about fire, fumes, acid, lasers and dust ends with the usual caution', () => {
    for (const id of ['old-solder', 'fire-coat', 'cyanide-and-acid', 'laser-stones', 'dust'] as const) {
      expect(CAUTIONS[id].text.endsWith(USUAL_CAUTION)).toBe(true);
    }
  });

  it('speaks of facts and never of fault', () => {
    for (const { text } of Object.values(CAUTIONS)) expect(text).not.toMatch(/\b(your|our) fault\b|\bblame\b|\bguilty\b/i);
  });
});

describe('a caution', () => {
  it('says what it is about: it is read among others, beside any form', () => {
    const without = Object.entries(CAUTIONS).filter(([, { text }]) => /^(They|These|Those|Use it) /.test(text));
    expect(without.map(([name]) => name)).toEqual([]);
  });
});
