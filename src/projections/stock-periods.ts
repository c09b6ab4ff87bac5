// The shop's stocks of one metal between their counts, in fine grams: what was counted, what came in and went out, and what nobody can account for.
import type { MetalFamily } from '../book/metals.ts';
import { metalOf } from '../book/metals.ts';
import { type FineWeighing, type MaterialBalance, materialBalance, type Terms, type Unaccounted } from '../reckoning/material-balance.ts';
import { netNg, type Reading } from '../weighing/reading.ts';
import type { Worths } from './balances.ts';
import { fineOf, inFine } from './flow.ts';
import type { Told } from './told.ts';

type At = Pick<Told, 'seq' | 'atMs'>;
export interface StockPeriod {
  readonly stock: string;
  readonly from: At;
  readonly to: At;
  readonly openingNg: number;
  readonly inNg: number;
  readonly outNg: number;
  readonly closingNg: number;
  /** Flows that were not weighed, and are in no sum. */
  readonly unweighed: number;
}
export interface StockBalance extends Pick<MaterialBalance, 'alarms'> {
  readonly periods: readonly (StockPeriod & Unaccounted)[];
}
interface Building {
  readonly from: At;
  readonly terms: Terms[number][];
  unweighed: number;
}

/** All periods that ended before `toMs`; `stocks` gives each its metal code. */
export function stockBalance(
  entries: readonly Told[],
  family: MetalFamily,
  stocks: ReadonlyMap<string, string>,
  worths: Worths,
  toMs: number,
): StockBalance {
  const open = new Map<string, Building>();
  const done: { readonly period: StockPeriod; readonly terms: Terms }[] = [];
  for (const { seq, atMs, facts } of entries.filter((one) => one.atMs < toMs)) {
    for (const [index, one] of facts.entries()) {
      const weigh = (stock: string, reading?: Reading) => weighingOf(`${seq}.${index}`, stocks.get(stock), reading, worths, atMs);
      if (one.fact === 'reading' && one.state === 'counted' && isOf(family, stocks.get(one.of))) {
        const count = weigh(one.of, one.reading);
        if (!count) continue;
        const was = open.get(one.of);
        const to = { seq, atMs };
        if (was) done.push(closed(one.of, { ...was, terms: [...was.terms, { ...count, sign: -1 }] }, to));
        open.set(one.of, { from: to, terms: [{ ...count, sign: 1 }], unweighed: 0 });
      } else if (one.fact === 'flow' && one.matter.kind === 'metal') {
        for (const [stock, sign] of [[one.to, 1] as const, [one.from, -1] as const]) {
          const was = open.get(stock);
          const weighed = was && weigh(stock, one.reading);
          if (weighed) was.terms.push({ ...weighed, sign });
          else if (was) was.unweighed += 1;
        }
      }
    }
  }
  const { periods, alarms } = materialBalance(done.map(({ terms }) => terms));
  return { periods: done.flatMap(({ period }, index) => (periods[index] ? [{ ...period, ...periods[index] }] : [])), alarms };
}

const isOf = (family: MetalFamily, metal: string | undefined): boolean => metal !== undefined && metalOf(metal).family === family;

/** A weighing in fine metal; null where nothing was weighed, or of no known fineness. */
function weighingOf(
  id: string,
  metal: string | undefined,
  reading: Reading | undefined,
  worths: Worths,
  atMs: number,
): FineWeighing | null {
  const ng = reading ? netNg(reading) : null;
  const fineNg = metal === undefined || ng === null ? null : fineOf(metal, ng);
  return reading && metal !== undefined && fineNg !== null ? { id, fineNg, worth: inFine(metal, worths(reading, atMs)) } : null;
}

function closed(stock: string, { from, terms, unweighed }: Building, to: At): { readonly period: StockPeriod; readonly terms: Terms } {
  const between = terms.slice(1, -1);
  const sum = (side: 1 | -1) => between.reduce((total, { sign, fineNg }) => (sign === side ? total + fineNg : total), 0);
  const counts = { openingNg: terms[0]?.fineNg ?? 0, closingNg: terms.at(-1)?.fineNg ?? 0 };
  return { period: { stock, from, to, ...counts, inNg: sum(1), outNg: sum(-1), unweighed }, terms };
}
