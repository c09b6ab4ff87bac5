// One shop from its first entry on: acts drawn from a seed, sent on a bad day, and the record and pages looked at after each.
import type { Answer, Line } from '../../src/ledger/leaf.ts';
import { massNg, parseMass } from '../../src/units/mass.ts';
import type { Reading } from '../../src/weighing/reading.ts';
import { beginning, namesFrom } from '../memory-ledger.ts';
import { line } from '../shop.ts';
import { type Act, nextAct, type Stage, unwritten } from './acts.ts';
import { type BadDay, openBadDay } from './bad-day.ts';
import { checkRecord } from './checks.ts';
import { type Counted, checkHouse, checkJob } from './said.ts';
import { worldOf } from './world.ts';

const STEPS = 10;

/** Plays the shop of a seed; answers what befell its commands, and adds what its pages claimed to `claims`. Throws at the first thing that is not so. */
export async function simulate(seed: number, claims: Counted): Promise<ReadonlyMap<string, number>> {
  const world = worldOf(seed);
  const names = namesFrom(seed);
  const [lot, stock] = [names.ref('lot'), names.ref('stock')];
  const reading = (unit: 'g' | 'ct', text: string, more: Partial<Reading>): Reading => {
    const parsed = parseMass(text, unit);
    if ('problem' in parsed) throw new Error(`${text}: ${parsed.problem}`);
    const [balance, stepNg] = unit === 'g' ? [names.balance, 10_000_000] : [names.caratBalance, 200_000];
    return { text, unit, ng: parsed.ng, basis: 'weighed', balance, stepNg: massNg(stepNg), ...more };
  };
  const stage: Stage = { world, refs: names, lot, stock, reading };
  const wire = { stock, name: 'Wire', metal: 'gold-750', weight: reading('g', '250.00', {}) };
  const day = await openBadDay(seed, world.chance, names.owner, [
    ...beginning(names),
    [line('lot_opened', { lot, name: 'Scrap', metal: 'gold-750' })],
    [line('metal_received', wire)],
  ]);
  try {
    for (let step = 0; step < STEPS; step++) {
      unwritten(world);
      const act = nextAct(stage);
      if (act) await play(day, stage, act);
      world.bench.drift();
      const kept = await checkRecord(day);
      const touched = world.jobs.find(({ job }) => job === act?.job);
      if (touched) await checkJob(day, touched, kept, claims);
    }
    await checkHouse(day, world, await checkRecord(day), claims);
    return day.happened;
  } finally {
    await day.close();
  }
}

/** A tired hand types; where the ledger asks, most look again, and the others insist. */
async function play(day: BadDay, { world: { chance } }: Stage, act: Act): Promise<void> {
  const tired = { careful: chance.hits(0.7), answered: false };
  const first = await day.send(act.lines(tired));
  if (act.mustBeAsked && !tired.careful && first.answer !== 'asked') throw new Error(`not asked about, ${told(act, tired, first)}`);
  const hand = { careful: tired.careful || chance.hits(0.7), answered: true };
  const answer = first.answer === 'asked' ? await day.send(act.lines(hand)) : first;
  if (act.mustBeRefused !== undefined) {
    if (answer.answer !== 'refused' || answer.code !== act.mustBeRefused) throw new Error(`${act.name}: ${told(act, hand, answer)}`);
    return;
  }
  if (answer.answer !== 'written') throw new Error(told(act, hand, answer));
  act.done(first.answer === 'asked' ? hand : tired);
}

const told = (act: Act, hand: Parameters<Act['lines']>[0], answer: Answer): string =>
  `${act.name} was answered ${JSON.stringify(answer)}\n${act
    .lines(hand)
    .map((one: Line) => JSON.stringify(one))
    .join('\n')}`;
