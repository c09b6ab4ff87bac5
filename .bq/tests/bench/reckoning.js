// How long the reckoning takes: medians in milliseconds, printed. `npx tsc -p tests/bench/tsconfig.json && node .build-bench/tests/bench/reckoning.js`.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { ROOT } from '../../src/machine.js';
import { balancesIn } from '../../src/projections/balances.js';
import { networkOf } from '../../src/projections/chain.js';
import { historyOf } from '../../src/projections/history.js';
import { reckonJob } from '../../src/projections/job-reckoning.js';
import { told } from '../../src/projections/told.js';
import { closure } from '../../src/reckoning/closure.js';
import { limitFor } from '../../src/reckoning/drift.js';
import { pairProbabilities } from '../../src/reckoning/labels.js';
import { OUTSIDE, reckon } from '../../src/reckoning/network.js';
import { massNg } from '../../src/units/mass.js';
import { memoryLedger, weighing } from '../memory-ledger.js';

function median(times, run) {
  const taken = Array.from({ length: times }, () => {
    const start = performance.now();
    run();
    return performance.now() - start;
  });
  return taken.sort((a, b) => a - b)[Math.floor(times / 2)] ?? 0;
}
const weighings = Array.from({ length: 11 }, (_, i) => {
  const worth = { uRandomG: 0.0078, factors: [{ id: 'gain', sensitivityG: 5.8e-5 * (i + 1) }], sG: 0.006, dof: 9 };
  return { id: `${i}`, sign: i % 2 === 0 ? 1 : -1, ng: massNg(5e9 + i * 1e7), stepNg: massNg(1e7), worth };
});
/** The 50 flows and 26 nodes of Zhang et al. (2010), from the check rows. */
function published() {
  const { rows } = JSON.parse(readFileSync(join(ROOT, 'tests/reference/reconciliation.json'), 'utf8'));
  const { A, y, sd } = rows.find(({ id }) => id === 'DR-P16').input;
  const end = (j, sign) => {
    const i = A.findIndex((row) => row[j] === sign);
    return i === -1 ? OUTSIDE : `${i}`;
  };
  const streams = y.map((value, j) => {
    const ends = { from: end(j, -1), to: end(j, 1) };
    return {
      id: `${j}`,
      ...ends,
      ng: massNg(Math.round(value * 1e9)),
      uRandomG: sd[j] ?? 0,
      factors: [{ id: `gain:${j % 5}`, sensitivityG: 1e-4 * value }],
    };
  });
  return { nodes: A.map((_, i) => `${i}`), streams };
}
/** 90 holdings in a row: three things passed along all of them (273 flows), and 27 flows of stock to and from the first ones. */
function row() {
  const name = (i) => (i % 91 === 0 ? OUTSIDE : `${i % 91}`);
  const flow = (id, from, to, j) => {
    const worth = { uRandomG: 0.01, factors: [{ id: `gain:${j % 9}`, sensitivityG: 1e-4 }] };
    return { id, from, to, ng: massNg(5e9 + 1e7 * (j % 3)), ...worth };
  };
  const passed = Array.from({ length: 273 }, (_, j) => flow(`${j}`, name(j), name(j + 1), j));
  const stock = Array.from({ length: 27 }, (_, j) =>
    flow(`s${j}`, j % 2 ? name(1 + (j >> 1)) : OUTSIDE, j % 2 ? OUTSIDE : name(1 + (j >> 1)), j),
  );
  return { nodes: Array.from({ length: 90 }, (_, i) => `${i + 1}`), streams: [...passed, ...stock] };
}
/** A real job of 12 entries in a ledger in memory: three weighings between steps, a stone out and in, metal cut and added. */
async function realJob() {
  const { names, tell, command, look } = await memoryLedger();
  const [job, piece, stone, lot, stock] = [names.ref('job'), names.ref('piece'), names.ref('stone'), names.ref('lot'), names.ref('stock')];
  const write = async (type, data) => {
    const decided = await tell(command([{ type, data }]));
    if ('answer' in decided) throw new Error(JSON.stringify(decided));
  };
  const grams = (steps) => weighing(names, 'g', steps);
  const terms = {
    priceKind: 'free',
    promise: '2027-02-01',
    dust: 'shop',
    cutMetal: 'customer',
    oldParts: 'customer',
    terms: '1',
    agreedBy: 'signature',
  };
  await write('lot_opened', { lot, name: 'L', metal: 'gold-750' });
  await write('metal_received', { stock, name: 'S', metal: 'gold-750', weight: grams(5000) });
  await write('job_opened', { job, bag: names.bag(), broughtBy: 'customer', owner: 'customer', channel: 'counter' });
  const parts = [{ part: 'shank', metal: 'gold-750' }];
  await write('piece_received', { job, piece, kind: 'ring', description: 'Ring', parts, stones: 1, weight: grams(682) });
  await write('work_agreed', { job, steps: ['re-tip', 'polish'], ...terms });
  await write('stone_unset', { piece, stone, stones: 1, condition: 'sound', weight: weighing(names, 'ct', 412) });
  await write('piece_weighed', { piece, state: 'stones out', weight: grams(674) });
  await write('metal_cut', { piece, lot, metal: 'gold-750', weight: grams(134) });
  await write('piece_weighed', { piece, state: 'cut', weight: grams(540) });
  await write('metal_added', { piece, stock, metal: 'gold-750', what: 'shank', weight: grams(150) });
  await write('stone_set', { piece, stone, stones: 1 });
  await write('piece_weighed', { piece, state: 'finished', weight: grams(697) });
  const kept = look().leaves;
  const own = kept.filter(({ leaf }) => leaf.links.some(({ s }) => s === job));
  return { own, balances: balancesIn(told(kept)) };
}
const zhang = published();
const real = await realJob();
const history = historyOf(told(real.own), real.balances.worths);
const shop = row();
const parcel = Array.from({ length: 16 }, (_, i) => Array.from({ length: 16 }, (__, j) => (i - j) ** 2 / 4));
const figures = {
  'a job of 11 weighings': median(500, () => closure(weighings)),
  'a real job, its network from facts to verdict': median(500, () => reckon(networkOf(history))),
  'a real job, from leaves to verdict': median(500, () => reckonJob(real.own, { balances: real.balances, size: 0 })),
  '50 flows, 26 nodes': median(50, () => reckon(zhang)),
  '300 flows, 90 nodes': median(5, () => reckon(shop)),
  'pair probabilities of 16 stones': median(10, () => pairProbabilities(parcel)),
  'limit of a chart from its run length': median(3, () => limitFor(600)),
};
for (const [what, ms] of Object.entries(figures)) console.log(`${what}: ${ms.toFixed(3)} ms`);
