// Is this weight believable? Mass never refuses for being odd: it asks for a second reading and a reason. Only what no balance
// could have shown (another unit, over its largest load, nothing left under the tare) is refused.
import type { Stamp } from '../book/entry.ts';
import { isWet } from '../book/work.ts';
import { decimalsOfStep, formatMass, formatMassWithUnit, type MassNg, parseMass } from '../units/mass.ts';
import type { Reading } from '../weighing/reading.ts';
import { netNg } from '../weighing/reading.ts';
import { parametersOf } from '../weighing/worth.ts';
import { expectedOf, isOdd, oddWords, type Plates, usualOff } from './expected.ts';
import type { Line, Stopped } from './leaf.ts';
import type { Overlay } from './overlay.ts';
import { type AnyEntry, readingsIn, type Views } from './registry.ts';
import type { Thing } from './thing.ts';

/** Checks every reading of the line against its balance, the entry's own doubt, and what the ledger expects; null when nothing is odd. */
export async function checkReadings(
  overlay: Overlay,
  entry: AnyEntry,
  data: Line['data'],
  view: Views,
  stamp: Stamp,
  shop: string | undefined,
): Promise<Stopped | null> {
  const readings = readingsIn(entry, data);
  const listed = (await overlay.thing(shop ?? ''))?.says ?? {};
  for (const { path, reading } of readings) {
    const odd = checkTares(path, reading, listed) ?? checkNet(path, reading) ?? (await checkOnBalance(overlay, path, reading));
    if (odd) return odd;
  }
  const doubt = entry.doubt?.(view, data);
  if (doubt && !readings.some(({ path, reading }) => path === doubt.field && isAnswered(reading))) {
    return { answer: 'asked', line: 0, code: doubt.asks, say: doubt.say, field: doubt.field ?? '' };
  }
  return checkExpected(overlay, entry, data, stamp, listed);
}

/** A doubt is answered by a second reading and a reason. */
const isAnswered = (reading: Reading) => (reading.repeats?.length ?? 0) > 0 && reading.because !== undefined;

/** What is taken off a weight is on the list of tares, once, by what the list says it weighs. */
function checkTares(path: string, { onPan = [] }: Reading, listed: Thing['says']): Stopped | null {
  for (const [index, { thing, tareNg }] of onPan.entries()) {
    const refused = (say: string): Stopped => ({ answer: 'refused', line: 0, code: 'tare_not_listed', say, field: path });
    const says = listed[`tare:${thing}`];
    if (says === undefined) return refused(`${thing} is not on the list of tares. Choose from the list, or list first what it weighs.`);
    if (Number(says) !== tareNg) return refused(`What ${thing} weighs was listed anew meanwhile. Send this again.`);
    if (onPan.findIndex((other) => other.thing === thing) < index) return refused(`${thing} is named twice. Name it once.`);
  }
  return null;
}

/** What is left once the listed tares are taken off is more than nothing. */
function checkNet(path: string, reading: Reading): Stopped | null {
  const ng = netNg(reading);
  if (ng === null || ng > 0) return null;
  const tares = (reading.onPan ?? []).map(({ thing }) => thing).join(' and ');
  const say = `With ${tares} taken off, nothing is left of ${reading.text}\u00a0${reading.unit}. Take off only what is on the pan, and type what the balance shows with it.`;
  return { answer: 'refused', line: 0, code: 'nothing_left', say, field: path };
}

async function checkOnBalance(overlay: Overlay, path: string, reading: Reading): Promise<Stopped | null> {
  if (reading.balance === undefined) return null;
  const balance = (await overlay.thing(reading.balance))?.balance;
  const refused = (code: 'not_found' | 'balance_unit' | 'over_largest_load', say: string): Stopped => ({
    answer: 'refused',
    line: 0,
    code,
    say,
    field: path,
  });
  if (!balance) return refused('not_found', 'That balance is not in service. Choose one from the list, or put it in service in Setup.');
  if (balance.unit !== reading.unit) {
    return refused(
      'balance_unit',
      `That balance reads in ${balance.unit}. Type what it shows, in ${balance.unit}, or choose another balance.`,
    );
  }
  const range = balance.ranges.find(({ maxNg }) => reading.ng <= maxNg);
  if (!range)
    return refused('over_largest_load', 'That is over the largest load of this balance. Check the figures, or choose another balance.');
  if (isAnswered(reading) || isShown(reading, range.stepNg)) return null;
  const step = formatMassWithUnit(range.stepNg, reading.unit, decimalsOfStep(range.stepNg, reading.unit));
  const say = `This balance reads in steps of ${step}, so it cannot show ${reading.text}. Weigh again and type what it shows.`;
  return { answer: 'asked', line: 0, code: 'not_a_step', say, field: path };
}

/** Whether the text is a whole number of steps, counted in the balance's own unit: 0.01 dwt is no whole number of ng. */
function isShown({ text, unit }: Reading, stepNg: MassNg): boolean {
  const parsed = parseMass(text, unit);
  const decimals = Math.max('ng' in parsed ? parsed.decimals : 0, decimalsOfStep(stepNg, unit));
  const inLastPlace = (ng: MassNg) => Number(formatMass(ng, unit, decimals).replace('.', ''));
  return 'ng' in parsed && inLastPlace(parsed.ng) % inLastPlace(stepNg) === 0;
}

/** Compares each weighing of a thing with what the ledger expects of it. */
async function checkExpected(
  overlay: Overlay,
  entry: AnyEntry,
  data: Line['data'],
  stamp: Stamp,
  listed: Thing['says'],
): Promise<Stopped | null> {
  const facts = entry.facts(data, stamp);
  for (const { path, reading } of readingsIn(entry, data)) {
    for (const fact of facts) {
      if (fact.fact !== 'reading' || fact.reading !== reading || isAnswered(reading) || isWet(fact.state, reading)) continue;
      const thing = await overlay.thing(fact.of);
      const say = thing && (await oddness(overlay, thing, fact, listed));
      if (say) return { answer: 'asked', line: 0, code: 'not_expected', say, field: path };
    }
  }
  return null;
}

async function oddness(
  overlay: Overlay,
  thing: Thing,
  { reading, state }: { readonly reading: Reading; readonly state: string },
  listed: Thing['says'],
): Promise<string | null> {
  const ng = netNg(reading);
  const balances = await parametersFor(overlay, [reading, ...Object.values(thing.rests).map((rest) => rest.reading)]);
  const expected = expectedOf(thing, balances, reading);
  if (ng === null || !expected) return null;
  const usual = usualOff(thing, await overlay.thing(thing.stream), state);
  if (!isOdd(expected, usual, ng)) return null;
  const others = (await overlay.openPieces()).filter(({ stream }) => stream !== thing.stream);
  const tares = Object.entries(listed).flatMap(([name, says]) =>
    name.startsWith('tare:') ? [{ name: name.slice(5), ng: Number(says) }] : [],
  );
  return oddWords(thing, reading, expected, usual, { balances, tares, others });
}

async function parametersFor(overlay: Overlay, readings: readonly Reading[]): Promise<Plates> {
  const ids = new Set(readings.flatMap(({ balance }) => balance ?? []));
  const things = await Promise.all([...ids].map((id) => overlay.thing(id)));
  return new Map(things.flatMap((one) => (one?.balance ? [[one.id, parametersOf(one.id, one.balance, one.says)] as const] : [])));
}
