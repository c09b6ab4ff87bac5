// The balances over time: each reading is worth what its balance was at that moment, by its plate, calibrations and daily checks.
import type { Fact } from '../book/facts.ts';
import { type MassNg, type MassUnit, massNg, NG_PER_UNIT, parseMass } from '../units/mass.ts';
import { type BalanceParameters, permissibleError } from '../weighing/balance.ts';
import { type CheckResult, dailyCheck } from '../weighing/check.ts';
import type { Reading } from '../weighing/reading.ts';
import { type Circumstances, driftAfterCheck, type Worth } from '../weighing/uncertainty.ts';
import { type Plate, parametersOf, worthOf } from '../weighing/worth.ts';
import type { Told } from './told.ts';

export interface Check {
  readonly seq: number;
  readonly atMs: number;
  readonly result: CheckResult;
  readonly certifiedNg: MassNg;
  readonly deviationNg: MassNg;
  readonly allowedNg: MassNg;
  readonly uRelative: number;
}
/** A balance since a calibration: its parameters hold until the next. */
interface Epoch {
  readonly seq: number;
  readonly atMs: number;
  /** False where the balance was only put in service. */
  readonly isCalibrated: boolean;
  readonly parameters: BalanceParameters;
}
interface Story {
  plate: Plate | null;
  marks: Record<string, string>;
  epochs: Epoch[];
  checks: Check[];
}
/** How a reading at a moment is judged: its worth, and whether its balance failed a check on either side of it. */
export type Worths = (reading: Reading, atMs: number) => Worth;
export interface Balances {
  readonly worths: Worths;
  readonly isDoubted: (reading: Reading, atMs: number) => boolean;
  /** When its balance was last calibrated before it; null where it never was. */
  readonly calibratedMs: (reading: Reading, atMs: number) => number | null;
  /** How many entries speak of balances. */
  readonly entries: number;
  /** The daily checks of one balance, in order. */
  readonly checksOf: (balance: string) => readonly Check[];
}
const DAY_MS = 24 * 3_600_000;

/** Balances from what the shop's entries say of them. */
export function balancesIn(entries: readonly Told[]): Balances {
  const stories = new Map<string, Story>();
  for (const entry of entries) for (const id of balancesNamed(entry.facts)) stories.set(id, continued(stories.get(id), id, entry));
  const storyOf = (reading: Reading) => (reading.balance === undefined ? undefined : stories.get(reading.balance));
  return {
    entries: entries.length,
    calibratedMs: (reading, atMs) => calibratedAt(storyOf(reading), atMs),
    checksOf: (balance) => stories.get(balance)?.checks ?? [],
    worths: (reading, atMs) => worthAt(reading, atMs, storyOf(reading)),
    isDoubted: (reading, atMs) => {
      const { checks } = storyOf(reading) ?? { checks: [] };
      return (
        checks.findLast((check) => check.atMs < atMs)?.result === 'fail' || checks.find((check) => check.atMs >= atMs)?.result === 'fail'
      );
    },
  };
}

type Drift = NonNullable<Circumstances['drift']>;

const epochAt = (story: Story | undefined, atMs: number): Epoch | undefined =>
  story?.epochs.findLast((one) => one.atMs <= atMs) ?? story?.epochs[0];

const calibratedAt = (story: Story | undefined, atMs: number): number | null =>
  story?.epochs.findLast((one) => one.isCalibrated && one.atMs <= atMs)?.atMs ?? null;

function worthAt(reading: Reading, atMs: number, story: Story | undefined): Worth {
  const epoch = epochAt(story, atMs);
  const check = story?.checks.findLast((one) => one.atMs <= atMs);
  const drift = epoch && (check && check.result !== 'fail' ? driftSince(check, atMs) : uncheckedDrift(epoch.parameters, atMs));
  return worthOf(reading, epoch?.parameters, { epoch: `${epoch?.seq ?? 0}`, ...(drift ? { drift } : {}) });
}

/** A check speaks in full for the day after it, and half as well after a month (common practice, no source); readings of one day share their drift. */
function driftSince({ seq, atMs, uRelative }: Check, nowMs: number): Drift {
  const days = Math.floor((nowMs - atMs) / DAY_MS);
  return { day: `${seq}.${days}`, uRelative: uRelative * Math.min(UNCHECKED_TIMES, 1 + days / WORN_OUT_DAYS) };
}
const [WORN_OUT_DAYS, UNCHECKED_TIMES] = [30, 2];

/** A balance that nobody checked, or that failed, is trusted half as far as one checked with 20 g, the weight most benches have (common practice, no source). */
function uncheckedDrift({ accuracyClass, eNg, ranges }: BalanceParameters, nowMs: number): Drift {
  const checkNg = massNg(Math.min(20_000_000_000, ranges.at(-1)?.maxNg ?? 20_000_000_000));
  const limitNg = permissibleError(accuracyClass, eNg, checkNg)?.inServiceNg ?? 3 * eNg;
  return { day: `unchecked.${Math.floor(nowMs / DAY_MS)}`, uRelative: UNCHECKED_TIMES * driftAfterCheck(limitNg, checkNg) };
}

const balancesNamed = (facts: readonly Fact[]): ReadonlySet<string> =>
  new Set(facts.flatMap((one) => (one.fact === 'balance' || one.fact === 'identity' ? [String(one.of)] : [])));

function continued(before: Story | undefined, id: string, { seq, atMs, facts }: Told): Story {
  const story = before ?? { plate: null, marks: {}, epochs: [], checks: [] };
  const said: Record<string, string> = {};
  for (const one of facts) {
    if (one.fact === 'balance' && one.of === id) story.plate = one;
    if (one.fact === 'identity' && one.of === id) said[one.mark] = one.says;
  }
  Object.assign(story.marks, said);
  if (!story.plate) return story;
  const isCalibrated = said.calibratedBy !== undefined;
  if (story.epochs.length === 0 || isCalibrated) {
    const parameters = parametersOf(id, story.plate, story.marks);
    story.epochs.push({ seq: epochOf(said, story, seq), atMs, isCalibrated, parameters });
  }
  const check = checkOf(said, story.epochs.at(-1)?.parameters);
  if (check) story.checks.push({ seq, atMs, ...check });
  return story;
}

/** A balance that was looked at and not adjusted keeps the gain error it had, so readings before and after share it. */
const epochOf = ({ adjusted }: Readonly<Record<string, string>>, { epochs }: Story, seq: number): number =>
  adjusted === 'not adjusted' ? (epochs.at(-1)?.seq ?? seq) : seq;

function checkOf(said: Readonly<Record<string, string>>, parameters: BalanceParameters | undefined): Omit<Check, 'seq' | 'atMs'> | null {
  const { checkCertifiedG, checkShown, checkShownUnit } = said;
  if (!parameters || checkCertifiedG === undefined || checkShown === undefined) return null;
  const certified = parseMass(checkCertifiedG, 'g');
  const shown = parseMass(checkShown, isUnit(checkShownUnit) ? checkShownUnit : 'g');
  if ('problem' in certified || 'problem' in shown) return null;
  const checked = dailyCheck(parameters.accuracyClass, parameters.eNg, certified.ng, shown.ng);
  return checked && { ...checked, certifiedNg: certified.ng, uRelative: driftAfterCheck(checked.allowedNg, certified.ng) };
}

const isUnit = (text: string | undefined): text is MassUnit => text !== undefined && Object.hasOwn(NG_PER_UNIT, text);
