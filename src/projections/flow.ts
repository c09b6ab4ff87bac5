// Metal through the shop over a period, one metal at a time in fine grams: stocks, jobs, bench skins and lots, and what goes between them.
import type { Fact } from '../book/facts.ts';
import { type MetalFamily, metalOf } from '../book/metals.ts';
import { type MassNg, massNg } from '../units/mass.ts';
import { mulDiv } from '../units/muldiv.ts';
import { netNg } from '../weighing/reading.ts';
import { uOfSum, type Worth } from '../weighing/uncertainty.ts';
import type { Worths } from './balances.ts';
import type { LossJob } from './loss.ts';
import type { Told } from './told.ts';

/** Ends that are no single holding: where metal comes from, all the jobs together, and what has left the shop. */
export const SUPPLIERS = 'suppliers';
export const JOBS = 'jobs';
export const GONE = 'gone';

export interface FineFlow {
  readonly from: string;
  readonly to: string;
  readonly fineNg: MassNg;
  /** Standard uncertainty of the weighings, in fine grams; the fineness is taken as marked. */
  readonly uG: number;
  readonly seqs: readonly number[];
  /** Flows that were not weighed, and are in no sum. */
  readonly unweighed: number;
  /** Weighed, or what jobs are short of by reckoning. */
  readonly basis: 'weighed' | 'by reckoning';
}
export interface Holding {
  readonly id: string;
  /** By the entries, at the beginning and the end of the period; the closing of one period is the opening of the next. */
  readonly openingNg: MassNg;
  readonly closingNg: MassNg;
}
export interface ShopFlow {
  readonly flows: readonly FineFlow[];
  readonly holdings: readonly Holding[];
  /** Entries whose metal has no known fineness: not counted. */
  readonly unknown: readonly number[];
}
interface Moved {
  readonly seq: number;
  readonly atMs: number;
  readonly from: string;
  readonly to: string;
  readonly fineNg: MassNg | null;
  /** Asked only of what flowed within the period. */
  readonly worth: () => Worth;
}
type Flow = Extract<Fact, { fact: 'flow' }>;

/** Fine metal in a mass of a stored metal code, to the nanogram; null where its fineness is not known. */
export function fineOf(metal: string, ng: number): MassNg | null {
  const { permille } = metalOf(metal);
  return permille === null ? null : massNg(mulDiv(ng, permille, 1000, 'half even'));
}

/** The flow of one metal in [fromMs, toMs); `pools` are the shop's own stocks, lots and skins, everything else within being jobs. */
export function shopFlow(
  entries: readonly Told[],
  family: MetalFamily,
  pools: ReadonlySet<string>,
  jobs: readonly LossJob[],
  worths: Worths,
  [fromMs, toMs]: readonly [number, number],
): ShopFlow {
  const unknown: number[] = [];
  const moved = entries.flatMap((entry) =>
    entry.facts.flatMap((one): Moved[] => {
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
function endsOf({ from, to }: Flow, pools: ReadonlySet<string>): Pick<Moved, 'from' | 'to'> | null {
  if (!pools.has(from) && !pools.has(to)) return null;
  const named = (end: string, outside: string) => (pools.has(end) ? end : end === 'outside' ? outside : JOBS);
  return { from: named(from, SUPPLIERS), to: named(to, GONE) };
}

function measured({ reading }: Flow, metal: string, { seq, atMs }: Told, worths: Worths): Pick<Moved, 'seq' | 'atMs' | 'fineNg' | 'worth'> {
  const ng = reading ? netNg(reading) : null;
  if (!reading || ng === null) return { seq, atMs, fineNg: null, worth: () => ({ uRandomG: 0, factors: [] }) };
  return { seq, atMs, fineNg: fineOf(metal, ng), worth: () => inFine(metal, worths(reading, atMs)) };
}

/** What a weighing of a metal is worth in fine grams; the fineness is taken as marked. */
export function inFine(metal: string, { uRandomG, factors }: Worth): Worth {
  const share = (metalOf(metal).permille ?? 0) / 1000;
  return { uRandomG: share * uRandomG, factors: factors.map(({ id, sensitivityG }) => ({ id, sensitivityG: share * sensitivityG })) };
}

function together(moved: readonly Moved[]): readonly FineFlow[] {
  const groups = new Map<string, Moved[]>();
  for (const one of moved) {
    const ends = `${one.from}|${one.to}`;
    const own = groups.get(ends);
    if (own) own.push(one);
    else groups.set(ends, [one]);
  }
  return [...groups.values()].flatMap((own): FineFlow[] => {
    const [first] = own;
    if (!first) return [];
    const weighed = own.filter(({ fineNg }) => fineNg !== null);
    return [
      {
        ...{ from: first.from, to: first.to, basis: 'weighed' },
        fineNg: massNg(weighed.reduce((sum, { fineNg }) => sum + (fineNg ?? 0), 0)),
        uG: uOfSum(weighed.map(({ worth }) => ({ sign: 1, worth: worth() }))),
        seqs: own.map(({ seq }) => seq),
        unweighed: own.length - weighed.length,
      },
    ];
  });
}

/** What the jobs are short of: filings in the skins and dust, weighed by nobody. */
function dustOf(jobs: readonly LossJob[]): readonly FineFlow[] {
  const fineNg = jobs.reduce((sum, { metal, closed }) => sum + (fineOf(metal, closed.lossNg) ?? 0), 0);
  const uG = uOfSum(jobs.flatMap(({ metal, closing }) => closing.map(({ sign, worth }) => ({ sign, worth: inFine(metal, worth) }))));
  // Each job counts with its sign, so that weighing error averages out; a sum below nothing flows the other way.
  const ends = fineNg < 0 ? { from: DUST, to: JOBS } : { from: JOBS, to: DUST };
  return fineNg === 0 ? [] : [{ ...ends, fineNg: massNg(Math.abs(fineNg)), uG, seqs: [], unweighed: 0, basis: 'by reckoning' }];
}
/** Filings and dust, in the skins or gone. */
export const DUST = 'dust';

function holdingsOf(moved: readonly Moved[], pools: ReadonlySet<string>, fromMs: number, toMs: number): readonly Holding[] {
  const at = (id: string, ms: number) =>
    massNg(
      moved
        .filter(({ atMs }) => atMs < ms)
        .reduce((sum, { from, to, fineNg }) => sum + (Number(to === id) - Number(from === id)) * (fineNg ?? 0), 0),
    );
  const touched = [...pools].filter((id) => moved.some(({ from, to }) => from === id || to === id));
  return touched.map((id) => ({ id, openingNg: at(id, fromMs), closingNg: at(id, toMs) }));
}
