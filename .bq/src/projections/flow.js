import { metalOf } from '../book/metals.js';
import { massNg } from '../units/mass.js';
import { mulDiv } from '../units/muldiv.js';
import { netNg } from '../weighing/reading.js';
import { uOfSum } from '../weighing/uncertainty.js';
/** Ends that are no single holding: where metal comes from, all the jobs together, and what has left the shop. */
export const SUPPLIERS = 'suppliers';
export const JOBS = 'jobs';
export const GONE = 'gone';
/** Fine metal in a mass of a stored metal code, to the nanogram; null where its fineness is not known. */
export function fineOf(metal, ng) {
  const { permille } = metalOf(metal);
  return permille === null ? null : massNg(mulDiv(ng, permille, 1000, 'half even'));
}
/** The flow of one metal in [fromMs, toMs); `pools` are the shop's own stocks, lots and skins, everything else within being jobs. */
export function shopFlow(entries, family, pools, jobs, worths, [fromMs, toMs]) {
  const unknown = [];
  const moved = entries.flatMap((entry) =>
    entry.facts.flatMap((one) => {
      if (one.fact !== 'flow' || one.matter.kind !== 'metal' || metalOf(one.matter.metal).family !== family) return [];
      if (one.reading && metalOf(one.matter.metal).permille === null) unknown.push(entry.seq);
      const between = endsOf(one, pools);
      return between ? [{ ...between, ...measured(one, one.matter.metal, entry, worths) }] : [];
    }),
  );
  const within = moved.filter(({ atMs }) => atMs >= fromMs && atMs < toMs);
  const byReckoning = dustOf(jobs.filter((job) => job.family === family && job.atMs >= fromMs && job.atMs < toMs));
  return { flows: [...together(within), ...byReckoning], holdings: holdingsOf(moved, pools, fromMs, toMs), unknown };
}
/** A flow with no stock, lot or skin at either end is a job's own affair. */
function endsOf({ from, to }, pools) {
  if (!pools.has(from) && !pools.has(to)) return null;
  const named = (end, outside) => (pools.has(end) ? end : end === 'outside' ? outside : JOBS);
  return { from: named(from, SUPPLIERS), to: named(to, GONE) };
}
function measured({ reading }, metal, { seq, atMs }, worths) {
  const ng = reading ? netNg(reading) : null;
  if (!reading || ng === null) return { seq, atMs, fineNg: null, worth: { uRandomG: 0, factors: [] } };
  const share = (metalOf(metal).permille ?? 0) / 1000;
  const { uRandomG, factors } = worths(reading, atMs);
  const scaled = {
    uRandomG: share * uRandomG,
    factors: factors.map(({ id, sensitivityG }) => ({ id, sensitivityG: share * sensitivityG })),
  };
  return { seq, atMs, fineNg: fineOf(metal, ng), worth: scaled };
}
function together(moved) {
  const groups = new Map();
  for (const one of moved) groups.set(`${one.from}|${one.to}`, [...(groups.get(`${one.from}|${one.to}`) ?? []), one]);
  return [...groups.values()].flatMap((own) => {
    const [first] = own;
    if (!first) return [];
    const weighed = own.filter(({ fineNg }) => fineNg !== null);
    return [
      {
        ...{ from: first.from, to: first.to, basis: 'weighed' },
        fineNg: massNg(weighed.reduce((sum, { fineNg }) => sum + (fineNg ?? 0), 0)),
        uG: uOfSum(weighed.map(({ worth }) => ({ sign: 1, worth }))),
        seqs: own.map(({ seq }) => seq),
        unweighed: own.length - weighed.length,
      },
    ];
  });
}
/** What the jobs are short of: filings in the skins and dust, weighed by nobody. */
function dustOf(jobs) {
  const fineNg = jobs.reduce((sum, { metal, closed }) => sum + (fineOf(metal, Math.max(0, closed.lossNg)) ?? 0), 0);
  const uG = uOfSum(jobs.flatMap(({ closing }) => closing.map(({ sign, worth }) => ({ sign, worth }))));
  return fineNg === 0 ? [] : [{ from: JOBS, to: DUST, fineNg: massNg(fineNg), uG, seqs: [], unweighed: 0, basis: 'by reckoning' }];
}
/** Filings and dust, in the skins or gone. */
export const DUST = 'dust';
function holdingsOf(moved, pools, fromMs, toMs) {
  const at = (id, ms) =>
    massNg(
      moved
        .filter(({ atMs }) => atMs < ms)
        .reduce((sum, { from, to, fineNg }) => sum + (Number(to === id) - Number(from === id)) * (fineNg ?? 0), 0),
    );
  const touched = [...pools].filter((id) => moved.some(({ from, to }) => from === id || to === id));
  return touched.map((id) => ({ id, openingNg: at(id, fromMs), closingNg: at(id, toMs) }));
}
