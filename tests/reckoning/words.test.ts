// What a customer reads, letter for letter: here and nowhere else words are compared.
import { describe, expect, it } from 'vitest';
import { closure } from '../../src/reckoning/closure.ts';
import { ownMetal } from '../../src/reckoning/own-metal.ts';
import { compareParcels, compareWeights } from '../../src/reckoning/stone-agreement.ts';
import { customerJob, customerMetal, customerParcel, customerStone, figuresOf, signedLoss } from '../../src/reckoning/words.ts';
import { massNg } from '../../src/units/mass.ts';
import { CLOSINGS, g, job, KEPT_FROM_ALL, NO_CAUSE, part, plain } from './written.ts';

const ct = (carats: number) => massNg(Math.round(carats * 2e8));
const weighedCt = (carats: number) => ({ g: carats * 0.2, worth: { uRandomG: 0.0002, factors: [] } });
const masses = { receivedNg: g(8.42), cutNg: g(1.37), filingsNg: g(0.11), addedNg: g(1.98) };
const told = (of: keyof typeof CLOSINGS) => plain(customerJob(masses, CLOSINGS[of]()));
const parcel = (ctOut: number, stones: number) =>
  plain(
    customerParcel(
      { stones: 12, ng: ct(0.186) },
      { stones, ng: ct(ctOut) },
      ct(0.001),
      compareParcels({ ...weighedCt(0.186), stones: 12 }, { ...weighedCt(ctOut), stones }),
    ),
  );
const stone = (ctOut: number, value: 'strong' | 'some' | 'cannot tell') =>
  plain(customerStone(ct(1.013), ct(ctOut), ct(0.001), compareWeights(weighedCt(1.013), weighedCt(ctOut)), value));
const piece = {
  received: [part(8.42)],
  stonesOut: [part(0.24)],
  offBefore: [part(1.37)],
  offAfter: [part(0.11)],
  returned: [part(8.87)],
  stonesSet: [part(0.24)],
};
const metal = (over: Partial<typeof piece> = {}) => {
  const own = ownMetal({ ...piece, ...over });
  return own === null ? '' : plain(customerMetal(own, g(0.01)));
};
const STONE_SAYS = 'the drawing and photographs show the rest.';

describe('the figures of a closing', () => {
  it('are the gap and the side it lies on, its ± of two u, and what would have shown', () => {
    // By hand: u = 0.0078·√2 = 0.01103 g, so 2u is 0.022 and up to the step 0.03; action from 0.04 g: 0.04 − 0.005 + 1.6449·0.01064 = 0.0525 g.
    const { gap, side, step, give, shows, dustMost } = figuresOf(CLOSINGS.differs());
    expect([gap, side, step, give, shows, dustMost].map((one) => one && plain(one))).toEqual([
      ...['0.55 g', 'less', '0.01 g', '0.03 g', '0.06 g'],
      null,
    ]);
    expect(figuresOf(CLOSINGS.gained()).side).toBe('more');
    expect(figuresOf(CLOSINGS.even()).side).toBe('none');
  });
  it('hold the most that is usual as dust where the work makes any', () => {
    // By hand: lognormal of mean 0.05 and spread 0.01: σ² = ln(1.04), μ = ln 0.05 − σ²/2; exp(μ + 1.6449·σ) = 0.0678, up to 0.07.
    expect(plain(figuresOf(CLOSINGS.usual()).dustMost ?? '')).toBe('0.07 g');
  });
  it('show a gain with a minus', () => {
    expect(plain(signedLoss(figuresOf(CLOSINGS.differs())))).toBe('0.55 g ± 0.03 g');
    expect(plain(signedLoss(figuresOf(CLOSINGS.gained())))).toBe('−0.18 g ± 0.03 g');
  });
});

describe('what a customer reads of a job', () => {
  it('says what was weighed, and what the balance cannot see', () => {
    expect(told('closes')).toBe(
      'We weighed 8.42 g in. 1.37 g was cut away, 0.11 g was collected as filings and 1.98 g of metal was added. What we return accounts for all of it to within 0.04 g. A gap of 0.09 g or more would have shown; a smaller one may not.',
    );
  });
  it('leaves out what did not happen, and says what was weighed where not all of it can be returned', () => {
    const only = (over: object) => plain(customerJob({ receivedNg: g(8.42), ...over }, CLOSINGS.even(), 'what was weighed'));
    expect(only({ cutNg: g(0) })).toMatch(/^We weighed 8\.42 g in\. What was weighed accounts for all of it to within 0\.03 g\. A gap/);
    expect(only({ cutNg: g(1.37) })).toMatch(/^We weighed 8\.42 g in\. 1\.37 g was cut away\. What was weighed/);
    expect(only({ filingsNg: g(0.11), addedNg: g(1) })).toContain(' 0.11 g was collected as filings and 1.00 g of metal was added. ');
  });
  it('names the gap itself where few readings let one through that is wider than its ±', () => {
    // With one degree of freedom Student's 95 % point is 6.3 u, far beyond 2 u.
    const few = { uRandomG: 0.0078, sG: 0.0078, factors: [], dof: 1, sOf: 'B1' };
    const closed = (out: number) => closure(job(8.42, -out).map((one) => ({ ...one, worth: few })));
    expect(plain(customerJob({ receivedNg: g(8.42) }, closed(8.38)))).toContain('to within 0.04 g.');
    expect(plain(customerJob({ receivedNg: g(8.42) }, closed(8.41)))).toContain('to within 0.03 g.');
  });
  it('accuses nobody before the job has been weighed again', () => {
    expect(told('again')).toBe('The weights before and after differ by 0.03 g. We are weighing again before we say more.');
  });
  it('owns up to a difference either way', () => {
    const after = 'We are checking our records and will tell you what we find.';
    expect(told('differs')).toBe(`The weights before and after differ by 0.55 g, more than our balances can explain. ${after}`);
    expect(told('gained')).toBe(`The weights before and after differ by 0.18 g, more than our balances can explain. ${after}`);
    expect(told('beyond')).toContain('more than our balances and the usual dust of such work can explain');
  });
  it('calls usual what is usual', () => {
    expect(told('usual')).toMatch(/^0\.05 g is missing; such work usually leaves up to 0\.07 g as dust\. A gap of 0\.\d\d g or more/);
  });
  it('does not say that weights agree which are too wide for it, nor pass off what was never weighed', () => {
    expect(told('wide')).toBe('What was weighed or estimated is known to within 0.03 g only, too wide to say that the weights agree.');
    expect(told('unweighed')).toBe('Not every part of this job was weighed, so it was not checked by weight.');
  });
});

describe('what a customer reads of stones', () => {
  it('counts a parcel first', () => {
    expect(parcel(0.187, 11)).toBe('12 stones in, 11 out: 1 missing. We are looking for it and will tell you what we find.');
    expect(parcel(0.187, 10)).toBe('12 stones in, 10 out: 2 missing. We are looking for them and will tell you what we find.');
    expect(parcel(0.187, 13)).toBe('12 stones in, 13 out: 1 more than came in. We are checking our records.');
  });
  it('then weighs it, and says what that is worth only where the weights agree', () => {
    expect(parcel(0.187, 12)).toBe(
      '12 stones in, 12 out, 0.186 ct in and 0.187 ct out: the two weights agree, as far as this balance can tell. Weight cannot tell a stone of this size from others like it.',
    );
    expect(parcel(0.17, 12)).toBe(
      '12 stones in, 12 out, 0.186 ct in and 0.170 ct out: the two weights do not agree, and we are checking our records.',
    );
  });
  it('says of one stone how many others would match', () => {
    const agrees =
      'The stone weighed 1.013 ct in and 1.014 ct out, read to 0.001 ct: the two weights agree, as far as this balance can tell.';
    expect(stone(1.014, 'strong')).toBe(`${agrees} Few other stones of this kind would match in all that was measured; ${STONE_SAYS}`);
    expect(stone(1.014, 'some')).toBe(`${agrees} Some other stones of this size would match too; ${STONE_SAYS}`);
    expect(stone(1.009, 'strong')).toMatch(/: we are cleaning it and weighing it again before we say more\.$/);
    expect(stone(0.9, 'strong')).toMatch(/: the two weights do not agree, and we are checking our records\.$/);
  });
});

describe('what a customer reads of their own metal', () => {
  const shown = 'is metal you brought. Weight cannot show which metal it is; the record of who held it does.';
  it('is a range where filings are mixed, and a figure where none are', () => {
    // By hand: four weighings of 0.0078 g, 2u = 0.0312 and up to the step 0.04 g.
    expect(metal()).toBe(`Of the 8.63 g of metal in the piece, between 6.70 g and 6.81 g (give or take 0.04 g) ${shown}`);
    expect(metal({ offAfter: [] })).toBe(`Of the 8.63 g of metal in the piece, 6.81 g (give or take 0.03 g) ${shown}`);
  });
});

describe('words kept from a customer', () => {
  it('are proof, chance, z, and causes that nobody saw', () => {
    const all = [
      ...(Object.keys(CLOSINGS) as (keyof typeof CLOSINGS)[]).map(told),
      ...[12, 11, 10, 13].map((stones) => parcel(0.187, stones)),
      parcel(0.17, 12),
      ...(['strong', 'some', 'cannot tell'] as const).map((value) => stone(1.014, value)),
      ...[1.009, 0.9].map((out) => stone(out, 'strong')),
      metal(),
    ];
    for (const text of all) {
      expect(text).not.toMatch(KEPT_FROM_ALL);
      expect(text).not.toMatch(NO_CAUSE);
      expect(text).not.toMatch(/\b[pz]\b|chance|probab|sigma|χ|±|\bE_?n\b/i);
    }
  });
});
