import { describe, expect, it } from 'vitest';
import { CALC_VERSION, closure, judgedAnew } from '../../src/reckoning/closure.ts';
import { ACTION_ALPHA, eitherTail, levelAt, lossTail, NOTE_ALPHA } from '../../src/reckoning/loss-law.ts';
import { massNg } from '../../src/units/mass.ts';
import type { BalanceParameters } from '../../src/weighing/balance.ts';
import { coarse, fine, weighed } from './random.ts';

const g = (grams: number) => massNg(Math.round(grams * 1e9));
const job = (balance: BalanceParameters, ...grams: readonly number[]) =>
  grams.map((mass) => weighed(balance, mass > 0 ? 1 : -1, Math.abs(g(mass))));

describe('closing one job', () => {
  it('counts a loss positive, exactly, and names the arithmetic', () => {
    const closed = closure(job(coarse, 8.42, -6.57, -1.37, -0.3));
    expect(closed.lossNg).toBe(g(0.18));
    expect(closed.calcVersion).toBe(CALC_VERSION);
    expect(closed.verdict).toBe('does not agree');
    expect(closed.finding).toBe('loss');
  });
  it('agrees when the gap is within the steps', () => {
    expect(closure(job(coarse, 8.42, -7.05, -1.36)).verdict).toBe('agrees');
  });
  it('calls for weighing again between the two levels', () => {
    const closed = closure(job(coarse, 8.42, -7.0, -1.38));
    expect(closed.lossNg).toBe(g(0.04));
    expect(closed.verdict).toBe('weigh again');
  });
  it('finds an apparent gain as well', () => {
    const closed = closure(job(coarse, 8.42, -8.6));
    expect(closed.finding).toBe('gain');
    expect(closed.verdict).toBe('does not agree');
  });
  it('says nothing of what was not weighed', () => {
    expect(closure(job(coarse, 8.42, -8.42), { unweighed: true }).verdict).toBe('not checked');
    expect(closure(job(coarse, 8.42)).verdict).toBe('not checked');
  });
  it('knows a usual working loss from one beyond it', () => {
    const worked = job(fine, 8.42, -8.36);
    const usual = { meanG: 0.05, tauG: 0.01 };
    expect(closure(worked).verdict).toBe('does not agree');
    expect(closure(worked, { usual }).finding).toBe('usual loss');
    expect(closure(worked, { usual }).verdict).toBe('agrees');
    expect(closure(job(fine, 8.42, -8.3), { usual }).verdict).toBe('does not agree');
  });
  it('flags later when s came from few readings', () => {
    const few = { ...coarse, repeatability: { sNg: 6_000_000, readings: 4 } };
    const [known, guessed] = [closure(job(coarse, 8.42, -8.42)), closure(job(few, 8.42, -8.42))];
    expect(guessed.dof).toBeLessThan(30);
    expect(guessed.action.flagNg).toBeGreaterThan(known.action.flagNg);
  });
  it('is judged anew by another usual loss as if it had been judged by that at first', () => {
    const usual = { meanG: 0.05, tauG: 0.01 };
    for (const weighings of [job(fine, 8.42, -8.36), job(fine, 8.42, -8.3), job(coarse, 8.42, -8.43), job(coarse, 8.42, -8.6)])
      for (const options of [{}, { fitnessG: 0.001 }]) {
        const [plain, worked] = [closure(weighings, options), closure(weighings, { ...options, usual })];
        expect(judgedAnew(plain, usual)).toEqual(worked);
        expect(judgedAnew(worked, undefined)).toEqual(plain);
      }
    expect(judgedAnew(closure(job(fine, 8.42), {}), usual).verdict).toBe('not checked');
  });
  it('gives z, the most that was lost, the coarsest step and the most that is usual as dust', () => {
    // By hand: u = 0.0078·√2 = 0.011031 g; 0.02 + 1.644854·u; lognormal dust of 0.05 ± 0.01 g: exp(ln 0.05 − ln(1.04)/2 + 1.644854·√ln 1.04).
    const worth = { uRandomG: 0.0078, factors: [] };
    const [received, returned] = [
      { id: 'in', sign: 1, ng: g(8.42), worth, stepNg: g(0.01) },
      { id: 'out', sign: -1, ng: g(8.4), worth, stepNg: g(0.001) },
    ] as const;
    const closed = closure([received, returned], { usual: { meanG: 0.05, tauG: 0.01 } });
    expect(closed.stepNg).toBe(g(0.01));
    expect(closed.z).toBeCloseTo(0.02 / 0.01103087, 5);
    expect(closed.mostLostG).toBeCloseTo(0.02 + 1.644854 * 0.01103087, 7);
    expect(closed.dustMostG).toBeCloseTo(0.067909, 5);
    expect(closure([received]).dustMostG).toBe(0);
    expect(closure([{ id: 'in', sign: 1, ng: g(1), worth }]).stepNg).toBe(0);
    expect(closure([received, { ...returned, ng: g(8.6) }]).mostLostG).toBe(0);
  });
  it('takes usual dust into account for a loss and not for a gain', () => {
    const usual = { meanG: 0.05, tauG: 0.01 };
    const [plain, worked] = [closure(job(fine, 8.42, -8.42)), closure(job(fine, 8.42, -8.42), { usual })];
    expect([worked.gainNote, worked.gainAction]).toEqual([plain.note, plain.action]);
    expect([worked.note.flagNg > plain.note.flagNg, worked.action.flagNg > plain.action.flagNg]).toEqual([true, true]);
    expect(worked.note.flagNg).toBeLessThan(worked.action.flagNg);
  });
  it('agrees only where twice its u is no wider than it may be', () => {
    // The least u there is: 1 µg.
    const perfect = { uRandomG: 0, factors: [] };
    const verdict = (fitnessG: number) =>
      closure(
        [
          { id: 'in', sign: 1, ng: g(5), worth: perfect },
          { id: 'out', sign: -1, ng: g(5), worth: perfect },
        ],
        { fitnessG },
      ).verdict;
    expect([2e-6, 1.99e-6].map(verdict)).toEqual(['agrees', 'cannot tell']);
  });
  it('says nothing of what only went out', () => {
    expect(closure(job(coarse, -8.42)).verdict).toBe('not checked');
  });
  it('stands when every weighing claims to be perfect', () => {
    const perfect = { uRandomG: 0, factors: [] };
    const closed = closure([
      { id: 'in', sign: 1, ng: g(5), worth: perfect },
      { id: 'out', sign: -1, ng: g(5), worth: perfect },
    ]);
    expect(closed.verdict).toBe('agrees');
    expect(Number.isFinite(closed.z)).toBe(true);
  });
});

describe('losses read in steps', () => {
  // Constructed balances, computed independently with scipy: note from, finds 95 % of, action from, finds 95 % of.
  it.each([
    [coarse, 2, 0.03, 0.043, 0.04, 0.053],
    [coarse, 4, 0.04, 0.06, 0.06, 0.08],
    [coarse, 8, 0.05, 0.081, 0.08, 0.111],
    [fine, 2, 0.004, 0.006, 0.006, 0.008],
    [fine, 8, 0.007, 0.012, 0.012, 0.017],
  ])('on the %o balance with %i weighings', (balance, count, noteG, noteFindsG, actionG, actionFindsG) => {
    const { note, action } = closure(job(balance, ...Array.from({ length: count }, (_, i) => (i % 2 === 0 ? 1 : -1))));
    expect(note.flagNg).toBe(g(noteG));
    expect(note.detectableG).toBeCloseTo(noteFindsG, 3);
    expect(action.flagNg).toBe(g(actionG));
    expect(action.detectableG).toBeCloseTo(actionFindsG, 3);
  });
  it('flags at the smallest step whose chance is allowed', () => {
    for (const uG of [0.0042, 0.011, 0.0163, 0.04]) {
      const spread = { uG, stepNg: 10_000_000 };
      for (const alpha of [NOTE_ALPHA, ACTION_ALPHA]) {
        const { flagNg } = levelAt(alpha, spread);
        expect(lossTail(flagNg, spread)).toBeLessThanOrEqual(alpha);
        expect(lossTail(flagNg - spread.stepNg, spread)).toBeGreaterThan(alpha);
      }
    }
  });
  it('is certain of nothing when nothing is lost', () => {
    expect(eitherTail(0, { uG: 0.01, stepNg: 10_000_000 })).toBe(1);
    expect(eitherTail(-30_000_000, { uG: 0.011, stepNg: 10_000_000 })).toBe(eitherTail(30_000_000, { uG: 0.011, stepNg: 10_000_000 }));
  });
});
