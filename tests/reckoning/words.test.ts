import { describe, expect, it } from 'vitest';
import { closure, type Weighing } from '../../src/reckoning/closure.ts';
import type { SettlementCheck } from '../../src/reckoning/fine-metal.ts';
import { reckon } from '../../src/reckoning/network.ts';
import { ownMetal } from '../../src/reckoning/own-metal.ts';
import { compareParcels, compareWeights } from '../../src/reckoning/stone-agreement.ts';
import {
  customerJob,
  customerMetal,
  customerParcel,
  customerStone,
  insurerJob,
  ownerJob,
  ownerPeriod,
  ownerSettlement,
  ownerSuspects,
  ownerTrend,
  slipWords,
  VERDICT_WORDS,
} from '../../src/reckoning/words.ts';
import { massNg } from '../../src/units/mass.ts';
import { chain } from './chain.ts';
import { balanceWith } from './random.ts';

const g = (grams: number) => massNg(Math.round(grams * 1e9));
const ct = (carats: number) => massNg(Math.round(carats * 2e8));
const worth = { uRandomG: 0.0078, factors: [] };
const job = (...grams: readonly number[]) =>
  grams.map((mass, i): Weighing => ({ id: `${i}`, sign: mass > 0 ? 1 : -1, ng: g(Math.abs(mass)), stepNg: g(0.01), worth }));
const part = (grams: number) => ({ ng: g(grams), worth });
const weighedCt = (carats: number) => ({ g: carats * 0.2, worth: { uRandomG: 0.0002, factors: [] } });
const plain = (text: string) => text.replaceAll('\u00a0', ' ');

const masses = { receivedNg: g(8.42), cutNg: g(1.37), filingsNg: g(0.11), addedNg: g(1.98) };
const usual = { meanG: 0.05, tauG: 0.01 };
const told = {
  closes: customerJob(masses, closure(job(8.42, 1.98, -1.37, -0.11, -8.9))),
  again: customerJob(masses, closure(job(8.42, -8.39))),
  differs: customerJob(masses, closure(job(8.42, -7.87))),
  gained: customerJob(masses, closure(job(8.42, -8.6))),
  usual: customerJob(masses, closure(job(8.42, -8.37), { usual })),
  unweighed: customerJob(masses, closure(job(8.42, -8.42), { unweighed: true })),
};
const parcel = (ctOut: number, stones: number) =>
  customerParcel(
    { stones: 12, ng: ct(0.186) },
    { stones, ng: ct(ctOut) },
    ct(0.001),
    compareParcels({ ...weighedCt(0.186), stones: 12 }, { ...weighedCt(ctOut), stones }),
  );
const stone = (ctOut: number, value: 'strong' | 'some' | 'cannot tell') =>
  customerStone(ct(1.013), ct(ctOut), ct(0.001), compareWeights(weighedCt(1.013), weighedCt(ctOut)), value);
const own = ownMetal({
  received: [part(8.42)],
  stonesOut: [part(0.24)],
  offBefore: [part(1.37)],
  offAfter: [part(0.11)],
  returned: [part(8.87)],
  stonesSet: [part(0.24)],
});
const customer = [
  ...Object.values(told),
  ...[12, 11, 10, 13].map((stones) => parcel(0.187, stones)),
  parcel(0.17, 12),
  ...(['strong', 'some', 'cannot tell'] as const).map((value) => stone(1.014, value)),
  stone(1.009, 'strong'),
  stone(0.9, 'strong'),
  own ? customerMetal(own, g(0.01)) : '',
].map(plain);

const coarse = balanceWith('0.01 g', 0.01, 0.006, 0.005);
const suspects = reckon(chain(coarse, (name, trueG) => Math.round((name === 'filings' ? 0 : trueG) * 1e9))).suspects;
const check: SettlementCheck = {
  fineG: 51.5194,
  uFineG: 0.06,
  shortG: 1.136,
  uG: 0.11,
  z: 10.3,
  en: 5.16,
  pShort: 0,
  byWeightG: 0.02,
  byFinenessG: 1.1,
  zWeight: 1.07,
  zFineness: 10,
  verdict: 'differs',
  detectableG: 0.3,
  money: null,
};
const insurer = insurerJob(
  [{ what: 'Received', text: '8.42 g', on: 'the bench balance, calibrated 3 Mar 2026' }],
  closure(job(8.42, -8.4)),
  { unweighed: ['the solder'], setAside: [], estimated: ['entry 7'], byDifference: [] },
);
const owner = [
  ownerJob(closure(job(8.42, -7.87))),
  ownerJob(closure(job(8.42, -8.6))),
  ownerJob(closure(job(8.42), { unweighed: true })),
  ownerSettlement({ fineG: 52.655875, uFineG: 0.0914 }, check, { minor: 9500, currency: 'GBP' }),
  ownerPeriod({ checked: 600, byChance: 12.3, flagged: 14, standing: [] }),
  ownerTrend('Bench 2, white gold filing', '3 May', 0.6, 600),
  ...suspects.map((set) => ownerSuspects([set], 10_000_000)),
].map(plain);

describe('what a customer reads of a job', () => {
  it('says what was weighed, and what the balance cannot see', () => {
    expect(plain(told.closes)).toBe(
      'We weighed 8.42 g in. 1.37 g was cut away, 0.11 g was collected as filings and 1.98 g of metal was added. What we return accounts for all of it to within 0.04 g. A gap of 0.09 g or more would have shown; a smaller one may not.',
    );
  });
  it('accuses nobody before the job has been weighed again', () => expect(plain(told.again)).toContain('weighing again'));
  it('owns up to a difference either way', () => {
    expect(plain(told.differs)).toContain('differ by 0.55 g, more than our balances can explain');
    expect(plain(told.gained)).toContain('differ by 0.18 g');
  });
  it('calls usual what is usual', () =>
    expect(plain(told.usual)).toMatch(/^0\.05 g is missing; such work usually leaves up to 0\.0\d g as dust\./));
  it('does not pass off what was never weighed', () => expect(told.unweighed).toContain('not checked by weight'));
});

describe('words kept from everyone', () => {
  it.each([...customer, ...owner, ...insurer, ...Object.values(VERDICT_WORDS)])('%s', (text) => {
    expect(text).not.toMatch(/proof|proven|certifi|exact|all yours|identity|undefined|NaN/i);
    expect(text.length).toBeGreaterThan(5);
  });
  it('of the customer are chance and z as well', () => {
    for (const text of customer) expect(text).not.toMatch(/\b[pz]\b|chance|probab|sigma|χ|±|\bE_?n\b/i);
  });
  it('name no cause that nobody saw: what is not there is missing, and dust is what such work usually leaves', () => {
    for (const text of [...customer, ...owner]) expect(text).not.toMatch(/went as dust|has gone|is wrong by/);
  });
});

describe('what the owner reads', () => {
  it('names suspects the figures cannot part', () => {
    expect(owner.at(-1)).toBe(
      'The weighing of cut-off (too light) or filings (too light) may be wrong by about 0.06 g ± 0.03 g, or about 0.06 g ± 0.03 g may have gone at cut and filed: the figures cannot say which. Weigh again.',
    );
  });
  it('names two things at once, each with its ± and side, where one does not explain the gaps', () => {
    // By hand for bare: its two steps give it from 2 and from 3 other readings, so 2u = 2·0.0079·√(1 + 1/(1/2 + 1/3)) = 0.023 g, up to the step 0.03.
    const wrongG: Readonly<Record<string, number>> = { bare: 0.18, polished: -0.3 };
    const found = reckon(chain(coarse, (name, trueG) => Math.round((trueG + (wrongG[name] ?? 0)) * 1e9)));
    expect(found.together?.map((sets) => plain(ownerSuspects(sets, 10_000_000)))).toEqual([
      'Two things at once: the weighing of bare (too heavy) may be wrong by about 0.18 g ± 0.03 g; and the weighing of polished (too light) may be wrong by about 0.30 g ± 0.03 g. Weigh again.',
    ]);
  });
  it('judges weight and fineness apart and gives the money', () => {
    expect(owner[3]).toBe(
      'The refinery found 51.52 g fine, we expected 52.66 ± 0.18 g. The weight agrees; the fineness does not. About £107.92 ± £20.90 at the price used. Ask for the reserved sample.',
    );
  });
  it('always sets flags against chance', () =>
    expect(owner[4]).toBe('600 checked; chance alone would make at most about 12 of them not agree; 14 did not.'));
  it('sees a gain called a gain', () => expect(owner[1]).toMatch(/^Gain 0.18 g/));
});

describe('what an insurer reads', () => {
  it('lists instruments, U, what would have shown, what was not weighed and the version', () => {
    expect(insurer.map(plain)).toEqual([
      'Received: 8.42 g on the bench balance, calibrated 3 Mar 2026.',
      'In less out: 0.02 g, U = 0.03 g (k = 2): agrees as far as the balance can tell.',
      'A loss of 0.06 g would have shown 95 times in 100.',
      'Not weighed: the solder. Estimated, not weighed: entry 7.',
      'Reckoned with version 2.',
    ]);
  });
  it('does not read a figure of what was not checked', () => {
    expect(
      insurerJob([], closure(job(8.42), { unweighed: true }), { unweighed: [], setAside: [], estimated: [], byDifference: [] }),
    ).toContain('Not checked by weight.');
  });
});

describe('a slip in words', () => {
  it('offers and does not accuse', () => {
    const slip = { kind: 'tare left on' as const, weighing: '2', text: '9.20', instead: 'tray 3' };
    expect(slipWords(slip)).toBe('the tray 3 was on the pan when 9.20 was read');
  });
});
