import { massNg, NG_PER_UNIT, parseMass } from '../units/mass.js';
import { permissibleError } from '../weighing/balance.js';
import { dailyCheck } from '../weighing/check.js';
import { driftAfterCheck } from '../weighing/uncertainty.js';
import { parametersOf, worthOf } from '../weighing/worth.js';

const DAY_MS = 24 * 3_600_000;
/** Balances from what the shop's entries say of them. */
export function balancesIn(entries) {
  const stories = new Map();
  for (const entry of entries) for (const id of balancesNamed(entry.facts)) stories.set(id, continued(stories.get(id), id, entry));
  const storyOf = (reading) => (reading.balance === undefined ? undefined : stories.get(reading.balance));
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
const epochAt = (story, atMs) => story?.epochs.findLast((one) => one.atMs <= atMs) ?? story?.epochs[0];
const calibratedAt = (story, atMs) => story?.epochs.findLast((one) => one.isCalibrated && one.atMs <= atMs)?.atMs ?? null;
function worthAt(reading, atMs, story) {
  const epoch = epochAt(story, atMs);
  const check = story?.checks.findLast((one) => one.atMs <= atMs);
  const drift = epoch && (check && check.result !== 'fail' ? driftSince(check, atMs) : uncheckedDrift(epoch.parameters, atMs));
  return worthOf(reading, epoch?.parameters, { epoch: `${epoch?.seq ?? 0}`, ...(drift ? { drift } : {}) });
}
/** A check speaks in full for the day after it, and half as well after a month (common practice, no source); readings of one day share their drift. */
function driftSince({ seq, atMs, uRelative }, nowMs) {
  const days = Math.floor((nowMs - atMs) / DAY_MS);
  return { day: `${seq}.${days}`, uRelative: uRelative * Math.min(UNCHECKED_TIMES, 1 + days / WORN_OUT_DAYS) };
}
const [WORN_OUT_DAYS, UNCHECKED_TIMES] = [30, 2];
/** A balance that nobody checked, or that failed, is trusted half as far as one checked with 20 g, the weight most benches have (common practice, no source). */
function uncheckedDrift({ accuracyClass, eNg, ranges }, nowMs) {
  const checkNg = massNg(Math.min(20_000_000_000, ranges.at(-1)?.maxNg ?? 20_000_000_000));
  const limitNg = permissibleError(accuracyClass, eNg, checkNg)?.inServiceNg ?? 3 * eNg;
  return { day: `unchecked.${Math.floor(nowMs / DAY_MS)}`, uRelative: UNCHECKED_TIMES * driftAfterCheck(limitNg, checkNg) };
}
const balancesNamed = (facts) =>
  new Set(facts.flatMap((one) => (one.fact === 'balance' || one.fact === 'identity' ? [String(one.of)] : [])));
function continued(before, id, { seq, atMs, facts }) {
  const story = before ?? { plate: null, marks: {}, epochs: [], checks: [] };
  const said = {};
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
const epochOf = ({ adjusted }, { epochs }, seq) => (adjusted === 'not adjusted' ? (epochs.at(-1)?.seq ?? seq) : seq);
function checkOf(said, parameters) {
  const { checkCertifiedG, checkShown, checkShownUnit } = said;
  if (!parameters || checkCertifiedG === undefined || checkShown === undefined) return null;
  const certified = parseMass(checkCertifiedG, 'g');
  const shown = parseMass(checkShown, isUnit(checkShownUnit) ? checkShownUnit : 'g');
  if ('problem' in certified || 'problem' in shown) return null;
  const checked = dailyCheck(parameters.accuracyClass, parameters.eNg, certified.ng, shown.ng);
  return checked && { ...checked, certifiedNg: certified.ng, uRelative: driftAfterCheck(checked.allowedNg, certified.ng) };
}
const isUnit = (text) => text !== undefined && Object.hasOwn(NG_PER_UNIT, text);
