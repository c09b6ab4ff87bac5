// What the owner, the bench and an insurer read, letter for letter.
import { describe, expect, it } from 'vitest';
import { closure } from '../../src/reckoning/closure.ts';
import type { SettlementCheck } from '../../src/reckoning/fine-metal.ts';
import { reckon } from '../../src/reckoning/network.ts';
import type { SlipKind } from '../../src/reckoning/slip.ts';
import type { Suspect, SuspectSet } from '../../src/reckoning/suspects.ts';
import {
  insurerJob,
  notReadWords,
  ownerJob,
  ownerPeriod,
  ownerSettlement,
  ownerSuspects,
  ownerTrend,
  slipWords,
  VERDICT_WORDS,
} from '../../src/reckoning/words.ts';
import { chain } from './chain.ts';
import { coarse } from './random.ts';
import { CLOSINGS, job, KEPT_FROM_ALL, NO_CAUSE, plain } from './written.ts';

const check: SettlementCheck = {
  ...{ fineG: 51.5194, uFineG: 0.06, shortG: 1.136, uG: 0.11, z: 10.3, en: 5.16, pShort: 0, byWeightG: 0.02, byFinenessG: 1.1 },
  ...{ zWeight: 1.07, zFineness: 10, verdict: 'differs', detectableG: 0.3, money: null },
};
const settled = (over: Partial<SettlementCheck> = {}) =>
  ownerSettlement({ fineG: 52.655875, uFineG: 0.0914 }, { ...check, ...over }, { minor: 9500, currency: 'GBP' });
const nothingMissing = { unweighed: [], setAside: [], estimated: [], byDifference: [] };
const suspected = (...suspects: readonly Suspect[]): SuspectSet => ({ suspects, z: 4, t: 16, significant: true });
const heavy = { fault: 'weighing wrong', stream: 'bare', size: 0.18, u: 0.012 } as const;
const light = { ...heavy, stream: 'whole', size: -0.18 } as const;
const lost = { fault: 'loss', nodes: ['cut', 'filed'], size: 0.06, u: 0.01 } as const;
const drift = { fault: 'factor drifted', factor: 'gain', size: 3, u: 1 } as const;
const said = (...sets: readonly SuspectSet[]) => plain(ownerSuspects(sets, 10_000_000));
const counted = (checked: number, byChance: number, flagged: number) => ownerPeriod({ checked, byChance, flagged, standing: [] });

describe('what the owner reads of a job', () => {
  it('is the gap with its side and ±, the verdict, and what would have shown', () => {
    expect(plain(ownerJob(CLOSINGS.differs()))).toBe('Loss 0.55 g ± 0.03 g: does not agree. A loss of 0.06 g would have shown.');
    expect(plain(ownerJob(CLOSINGS.gained()))).toBe('Gain 0.18 g ± 0.03 g: does not agree. A loss of 0.06 g would have shown.');
    expect(plain(ownerJob(CLOSINGS.even()))).toMatch(/^No difference to 0\.01 g \(± 0\.03 g\): agrees as far as the balance can tell\./);
    expect(plain(ownerJob(CLOSINGS.usual()))).toMatch(
      /^Loss 0\.05 g ± 0\.03 g: agrees as far as the balance can tell, no more than such work usually leaves as dust \(up to 0\.07 g\)\./,
    );
    expect(ownerJob(CLOSINGS.unweighed())).toBe('Not checked by weight: not every flow was weighed.');
  });
});

describe('what the owner reads of suspects', () => {
  it('names those that the figures cannot part', () => {
    const { suspects } = reckon(chain(coarse, (name, trueG) => Math.round((name === 'filings' ? 0 : trueG) * 1e9)));
    expect(suspects.map((set) => said(set)).at(-1)).toBe(
      'The weighing of cut-off (too light) or filings (too light) may be wrong by about 0.06 g ± 0.03 g, or about 0.06 g ± 0.03 g may have gone at cut and filed: the figures cannot say which. Weigh again.',
    );
  });
  it('names two things at once, each with its ± and side, where one does not explain the gaps', () => {
    // By hand for bare: its two steps give it from 2 and from 3 other readings, so 2u = 2·0.0079·√(1 + 1/(1/2 + 1/3)) = 0.023 g, up to the step 0.03.
    const wrongG: Readonly<Record<string, number>> = { bare: 0.18, polished: -0.3 };
    const found = reckon(chain(coarse, (name, trueG) => Math.round((trueG + (wrongG[name] ?? 0)) * 1e9)));
    expect(found.together?.map((sets) => said(...sets))).toEqual([
      'Two things at once: the weighing of bare (too heavy) may be wrong by about 0.18 g ± 0.03 g; and the weighing of polished (too light) may be wrong by about 0.30 g ± 0.03 g. Weigh again.',
    ]);
  });
  it('gives each fault its own words, and a drift no size', () => {
    expect(said(suspected(heavy))).toBe('The weighing of bare (too heavy) may be wrong by about 0.18 g ± 0.03 g. Weigh again.');
    expect(said(suspected(light))).toContain('whole (too light) may be wrong by about 0.18 g');
    expect(said(suspected(lost))).toBe('About 0.06 g ± 0.02 g may have gone at cut and filed. Weigh again.');
    expect(said(suspected({ ...lost, nodes: ['a', 'b', 'c'], size: -0.06 }))).toBe(
      'About 0.06 g ± 0.02 g may have come in unrecorded at a, b and c. Weigh again.',
    );
    expect(said(suspected(drift))).toBe('Gain may have drifted. Weigh again.');
    expect(said(suspected(drift, heavy, light))).toBe(
      'The weighing of bare (too heavy) or whole (too light) may be wrong by about 0.18 g ± 0.03 g, or gain may have drifted: the figures cannot say which. Weigh again.',
    );
  });
  it('counts them, and gives flows, steps and balances the words of the page', () => {
    expect(said(suspected(heavy), suspected(lost), suspected(drift))).toMatch(/^Three things at once: the weighing of bare .*; and about /);
    const named = ownerSuspects([suspected(heavy, lost, drift)], 10_000_000, (id) => `«${id}»`);
    for (const id of ['bare', 'cut', 'filed', 'gain']) expect(named).toContain(`«${id}»`);
  });
});

describe('what the owner reads of the metal', () => {
  it('judges weight and fineness apart and gives the money', () => {
    expect(settled()).toBe(
      'The refinery found 51.52 g fine, we expected 52.66 ± 0.18 g. The weight agrees; the fineness does not. About £107.92 ± £20.90 at the price used. Ask for the reserved sample.',
    );
    expect(settled({ verdict: 'ask for a second assay', zWeight: -2, zFineness: 2 })).toMatch(
      /The weight agrees; the fineness agrees\..* Ask for a second assay if the money is worth it\.$/,
    );
    expect(settled({ verdict: 'within what both can tell', zWeight: -2.01, shortG: -1.136 })).toMatch(
      /The weight does not; .* About £107\.92 .* Within what both can tell\.$/,
    );
  });
  it('always sets flags against chance', () => {
    expect(counted(600, 12.3, 14)).toBe('600 checked; chance alone would make at most about 12 of them not agree; 14 did not.');
    expect(counted(500, 10, 0)).toContain('at most about 10 of them');
    expect(counted(450, 9.94, 0)).toContain('at most about 9.9 of them');
    expect(counted(20, 0.04, 1)).toBe('20 checked; chance alone would make almost none of them not agree; 1 did not.');
  });
  it('says of a signal how often one comes with no change', () => {
    expect(ownerTrend('Bench 2, white gold filing', '3 May', 0.64, 599.6)).toBe(
      'Bench 2, white gold filing: losses have run above usual since 3 May, about 0.6 of a usual spread per job. With no change, such a signal comes once in about 600 jobs.',
    );
  });
});

describe('what an insurer reads', () => {
  const read = (of: keyof typeof CLOSINGS, notRead = nothingMissing) => insurerJob([], CLOSINGS[of](), notRead).map(plain);
  it('lists instruments, U, what would have shown, what was not weighed and the version', () => {
    const readings = [{ what: 'Received', text: '8.42 g', on: 'the bench balance, calibrated 3 Mar 2026' }];
    const notRead = { ...nothingMissing, unweighed: ['the solder'], estimated: ['entry 7'] };
    expect(insurerJob(readings, closure(job(8.42, -8.4)), notRead).map(plain)).toEqual([
      'Received: 8.42 g on the bench balance, calibrated 3 Mar 2026.',
      'In less out: 0.02 g, U = 0.03 g (k = 2): agrees as far as the balance can tell.',
      'A loss of 0.06 g would have shown 95 times in 100.',
      'Not weighed: the solder. Estimated, not weighed: entry 7.',
      'Reckoned with version 2.',
    ]);
  });
  it('gives a gain its sign, and no figure of what was not checked', () => {
    expect(read('gained')[0]).toBe('In less out: −0.18 g, U = 0.03 g (k = 2): does not agree.');
    expect(read('unweighed')).toEqual(['Not checked by weight.', 'Everything was weighed.', 'Reckoned with version 2.']);
  });
  it.each([
    [{}, 'Everything was weighed.'],
    [{ unweighed: ['a', 'b'] }, 'Not weighed: a and b.'],
    [{ setAside: ['a', 'b', 'c'] }, 'Perhaps not dry, or with something of unknown weight, and in no sum: a, b and c.'],
    [{ estimated: ['a'] }, 'Estimated, not weighed: a.'],
    [{ byDifference: ['a'], unweighed: ['b'] }, 'Not weighed: b. By difference of two readings: a.'],
  ])('of what was not read on a balance: %o', (over, words) => {
    expect(notReadWords({ ...nothingMissing, ...over })).toBe(words);
  });
});

describe('a slip in words', () => {
  it.each<[SlipKind, string, string]>([
    ['digits swapped', '8.42', 'digits swapped: 9.20 written for 8.42'],
    ['decimal place', '0.92', 'decimal place: 9.20 written for 0.92'],
    ['other unit', 'ct', 'other unit: 9.20 was in ct'],
    ['coarser balance', '0.1 g', 'another balance: 9.20 is what one with steps of 0.1 g shows'],
    ['counted twice', 'once', 'counted twice: 9.20'],
    ['wrong direction', 'out', 'wrong direction: 9.20 went out'],
    ['tare left on', 'tray 3', 'the tray 3 was on the pan when 9.20 was read'],
    ['another piece', 'job 12', 'another piece in the hand: 9.20 is what job 12 weighs'],
  ])('%s offers and does not accuse', (kind, instead, words) => {
    expect(slipWords({ kind, weighing: '2', text: '9.20', instead })).toBe(words);
  });
});

describe('words kept from everyone', () => {
  it('are proof, and causes that nobody saw', () => {
    const owner = (Object.keys(CLOSINGS) as (keyof typeof CLOSINGS)[]).map((of) => ownerJob(CLOSINGS[of]()));
    for (const text of [...owner, settled(), said(suspected(heavy, lost, drift)), ...Object.values(VERDICT_WORDS)]) {
      expect(text).not.toMatch(KEPT_FROM_ALL);
      expect(text).not.toMatch(NO_CAUSE);
    }
  });
});
