import { describe, expect, it } from 'vitest';
import { reckonAssayed } from '../../src/reckoning/composition.ts';
import { checkSettlement, runningBias, sumLot, weightedMean } from '../../src/reckoning/fine-metal.ts';
import { diagonal } from '../../src/reckoning/matrix.ts';
import { OUTSIDE } from '../../src/reckoning/network.ts';
import { ownMetal } from '../../src/reckoning/own-metal.ts';
import { closeSkin } from '../../src/reckoning/skins.ts';
import { massNg } from '../../src/units/mass.ts';

const g = (grams: number) => massNg(Math.round(grams * 1e9));
const worth = { uRandomG: 0.0078, factors: [] };
const part = (grams: number) => ({ ng: g(grams), worth });

describe("the customer's own metal in the returned piece", () => {
  const piece = {
    received: [part(8.42)],
    stonesOut: [part(0.24)],
    offBefore: [part(1.37)],
    offAfter: [part(0.11)],
    returned: [part(8.87)],
    stonesSet: [part(0.24)],
  };
  it('is a range, since filings after the joining are mixed', () => {
    const found = ownMetal(piece);
    expect(found?.metalNg).toBe(g(8.63));
    expect(found?.highNg).toBe(g(6.81));
    expect(found?.lowNg).toBe(g(6.7));
    expect(found?.lowShare).toBeCloseTo(6.7 / 8.63, 12);
    expect(found?.highShare).toBeCloseTo(6.81 / 8.63, 12);
    // Four independent weighings of 0.0078 g: 0.0078·√4.
    expect(found?.uLowG).toBeCloseTo(0.0156, 9);
  });
  it('is never more than the metal there is', () => {
    const found = ownMetal({ ...piece, offBefore: [], offAfter: [], returned: [part(8.4)] });
    expect(found?.highShare).toBe(1);
  });
  it('is a single figure when nothing was taken off after the joining', () => {
    const found = ownMetal({ ...piece, offAfter: [] });
    expect(found?.lowNg).toBe(found?.highNg);
  });
  it('is not asked of a piece without metal', () => {
    expect(ownMetal({ ...piece, returned: [part(0.24)] })).toBeNull();
  });
});

describe('a scrap lot', () => {
  const item = (alloy: string) => ({ massG: 20, worth, lowShare: 0.748, highShare: 0.752, alloy });
  it('is less well known when its items are of one batch', () => {
    const [one, two] = [sumLot([item('a'), item('a')]), sumLot([item('a'), item('b')])];
    // By hand: 20 g × 0.004/√12 = 0.02309 g a batch; added in line 0.04619, in quadrature 0.03266.
    expect(Math.sqrt(one.uFineG ** 2 - 2 * (0.75 * 0.0078) ** 2)).toBeCloseTo(0.0461880215, 9);
    expect(Math.sqrt(two.uFineG ** 2 - 2 * (0.75 * 0.0078) ** 2)).toBeCloseTo(0.0326598632, 9);
  });
  it('of nothing has no fineness to be known', () => {
    expect(sumLot([{ ...item('a'), massG: 0 }])).toMatchObject({ massG: 0, share: 0, uShare: 0 });
  });
  it('may be empty', () => {
    expect(sumLot([])).toEqual({ massG: 0, uMassG: 0, fineG: 0, uFineG: 0, share: 0, uShare: 0 });
  });
});

describe('a settlement', () => {
  const expected = { massG: 74.48, uMassG: 0.02, fineG: 52.136, uFineG: 0.09, share: 0.7, uShare: 0.0012 };
  it.each([
    [0.699, 'within what both can tell'],
    [0.6965, 'ask for a second assay'],
    [0.692, 'differs'],
  ])('at %d fine: %s', (share, verdict) => {
    const check = checkSettlement(expected, { massG: 74.48, uMassG: 0.02, share, uShare: 0.0008 });
    expect(check.verdict).toBe(verdict);
  });
  it('is within to E_n = 1 and asks to 1.5, and says what could be found and what that is worth', () => {
    // By hand: short of 1 or 1.5 g with u = 0.5 g; Currie 1968: 3.29 u can be found.
    const short = (fineG: number, price?: number) =>
      checkSettlement({ ...expected, fineG, uFineG: 0.5 }, { massG: 0, uMassG: 0.02, share: 0, uShare: 0.0008 }, price);
    expect([1, 1.001, 1.5, 1.501].map((fineG) => short(fineG).verdict)).toEqual([
      'within what both can tell',
      'ask for a second assay',
      'ask for a second assay',
      'differs',
    ]);
    expect(short(1).detectableG).toBeCloseTo(3.29 * 0.5, 3);
    expect([short(1).money, short(1, 40).money]).toEqual([null, { short: 40, U: 40 }]);
  });
  it('splits its shortage without remainder', () => {
    const lot = { ...expected, fineG: 74.48 * 0.7 };
    const check = checkSettlement(lot, { massG: 74.31, uMassG: 0.02, share: 0.6935, uShare: 0.0008 });
    expect(check.byWeightG + check.byFinenessG).toBeCloseTo(check.shortG, 12);
  });
  it('shows a steady shave of one sigma after about nine lots', () => {
    expect(runningBias(Array.from({ length: 9 }, () => 1))).toBe(3);
    expect(runningBias([])).toBe(0);
  });
  it('weighs three assays by how well each is known', () => {
    // By hand: (1/1 + 3/4 + 5/4)/(1 + 1/4 + 1/4) = 2 with u = 1/√1.5.
    const mean = weightedMean([
      { value: 1, u: 1 },
      { value: 3, u: 2 },
      { value: 5, u: 2 },
    ]);
    expect(mean.value).toBeCloseTo(2, 12);
    expect(mean.u).toBeCloseTo(1 / Math.sqrt(1.5), 12);
  });
});

describe('masses and finenesses together', () => {
  it('keep the fine metal as well as the mass at every node', () => {
    const stream = (id: string, from: string, to: string, massG: number, share: number) => ({ id, from, to, massG, shares: [share] });
    const network = {
      nodes: ['melt', 'lot'],
      streams: [
        stream('scrap', OUTSIDE, 'melt', 50.1, 0.75),
        stream('lemel', OUTSIDE, 'melt', 10, 0.58),
        stream('bar', 'melt', 'lot', 60, 0.725),
        stream('sent', 'lot', OUTSIDE, 59.95, 0.72),
      ],
      complete: false,
    };
    const { x } = reckonAssayed(network, diagonal([0.02, 0.02, 0.02, 0.02, 0.001, 0.003, 0.001, 0.001].map((u) => u * u)));
    const [scrap = 0, lemel = 0, bar = 0, sent = 0, a = 0, b = 0, c = 0, d = 0] = x;
    expect(scrap + lemel).toBeCloseTo(bar, 9);
    expect(bar).toBeCloseTo(sent, 9);
    expect(scrap * a + lemel * b).toBeCloseTo(bar * c, 9);
    expect(c).toBeCloseTo(d, 9);
  });
});

describe('an alloy of three metals assayed in full', () => {
  it('keeps each of them, and its shares add up to one', () => {
    const ends = [
      ['old', OUTSIDE, 'melt', 10, [0.75, 0.13, 0.12]],
      ['silver', OUTSIDE, 'melt', 2, [0, 0.99, 0.01]],
      ['bar', 'melt', OUTSIDE, 12.01, [0.62, 0.28, 0.11]],
    ] as const;
    const streams = ends.map(([id, from, to, massG, shares]) => ({ id, from, to, massG, shares }));
    const us = [0.01, 0.01, 0.01, ...new Array<number>(9).fill(0.002)];
    const { x } = reckonAssayed({ nodes: ['melt'], streams, complete: true }, diagonal(us.map((u) => u * u)));
    const [mass, shares] = [x.slice(0, 3), [x.slice(3, 6), x.slice(6, 9), x.slice(9)]];
    for (const own of shares) expect(own.reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 9);
    const fine = (j: number, metal: number) => (mass[j] ?? 0) * (shares[j]?.[metal] ?? 0);
    for (const metal of [0, 1, 2]) expect(fine(0, metal) + fine(1, metal)).toBeCloseTo(fine(2, metal), 9);
    expect((mass[0] ?? 0) + (mass[1] ?? 0)).toBeCloseTo(mass[2] ?? 0, 9);
  });
});

describe('a bench skin', () => {
  const gain = (grams: number) => ({ uRandomG: 0.0078, factors: [{ id: 'gain:B1:2026a', sensitivityG: 5.8e-5 * grams }] });
  const weighing = (id: string, sign: 1 | -1, grams: number) => ({ id, sign, ng: g(grams), stepNg: g(0.01), worth: gain(grams) });
  const jobs = [
    { job: 'J1', weighings: [weighing('in', 1, 8.42), weighing('out', -1, 8.3)] },
    { job: 'J2', weighings: [weighing('in', 1, 5.1), weighing('out', -1, 5.02)] },
  ];
  const skin = (grams: number) => ({ ng: g(grams), worth: gain(grams), stepNg: g(0.01) });

  it('closes the unweighed filings of its jobs', () => {
    const found = closeSkin(jobs, { opening: skin(1.2), closing: skin(1.4) });
    expect(found.lossNg).toBe(0);
    expect(found.verdict).toBe('agrees');
    expect(found.gave).toEqual([
      { job: 'J1', ng: g(0.12) },
      { job: 'J2', ng: g(0.08) },
    ]);
  });
  it('reckons that a share of the dust, known to so much, never reached it', () => {
    const usual = { meanG: 0.04, tauG: 0.02 };
    const lost = { share: 0.5, uShare: 0.1 };
    const usualOf = (...worked: Parameters<typeof closeSkin>[0]) =>
      closeSkin(worked, { opening: skin(1.2), closing: skin(1.4) }, lost).usual;
    const [one, two] = jobs;
    if (!one || !two) throw new Error('two jobs are needed');
    // By hand: 0.5·0.08 g ± √((0.1·0.08)² + 2·(0.5·0.02)²).
    const both = usualOf({ ...one, usual }, { ...two, usual });
    expect(both?.meanG).toBeCloseTo(0.04, 12);
    expect(both?.tauG).toBeCloseTo(Math.sqrt(0.008 ** 2 + 2 * 0.01 ** 2), 12);
    expect(usualOf({ ...one, usual }, two)?.meanG).toBeCloseTo(0.02, 12);
    expect(usualOf(one, two)).toBeNull();
  });
  it('shows what never reached it', () => {
    expect(closeSkin(jobs, { opening: skin(1.2), closing: skin(1.2) })).toMatchObject({ lossNg: g(0.2), verdict: 'does not agree' });
  });
  it('allows for the usual dust of its jobs, and for what was sent to the jar', () => {
    const usual = { meanG: 0.04, tauG: 0.02 };
    const worked = jobs.map((job) => ({ ...job, usual }));
    const found = closeSkin(worked, { opening: skin(1.2), closing: skin(0.32), removed: [skin(1)] });
    expect(found.lossNg).toBe(g(0.08));
    expect(found.verdict).toBe('agrees');
  });
});
