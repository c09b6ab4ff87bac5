// The reckoning of one job, folded from its own leaves: what came in, went out and was added, what is left, and whether it agrees.
import type { Fact } from '../book/facts.ts';
import { correctionsIn, factsOf } from '../ledger/corrections.ts';
import type { Kept } from '../ledger/leaf.ts';
import type { Thing } from '../ledger/thing.ts';
import { type Closure, closure, type Weighing } from '../reckoning/closure.ts';
import { VERDICT_WORDS } from '../reckoning/words.ts';
import { decimalsOfStep, formatMassWithUnit, type MassNg, massNg } from '../units/mass.ts';
import { assumedParameters } from '../weighing/balance.ts';
import { netNg, type Reading } from '../weighing/reading.ts';
import { type Worth, worthOfEstimate, worthOfReading } from '../weighing/uncertainty.ts';

export type Balances = ReadonlyMap<string, NonNullable<Thing['balance']>>;
/** A weighing of the chain, with the entry that says it. */
export interface Term extends Weighing {
  readonly seq: number;
}
export interface JobReckoning {
  readonly cameIn: Term | null;
  readonly added: readonly Term[];
  readonly removed: readonly Term[];
  readonly last: Term | null;
  /** What is in the piece by reckoning, with its standard uncertainty; null from the first flow that was not weighed. */
  readonly expected: { readonly ng: MassNg; readonly uG: number } | null;
  readonly unknownSince: number | null;
  /** The closing of the chain at its last weighing; null while there is none after work. */
  readonly closed: Closure | null;
  readonly state: 'open' | 'level' | 'off';
  readonly sentence: string;
}

type Ordered = { readonly seq: number; readonly facts: readonly Fact[] };

/** Reckons a job from its entries; the chain begins at the cleaned, dry weight where there is one, so that soap is not lost gold. */
export function reckonJob(kept: readonly Kept[], balances: Balances): JobReckoning {
  const entries = inOrder(kept);
  const pieces = new Set(entries.flatMap(({ facts }) => facts.flatMap((one) => (one.fact === 'count' ? [String(one.of)] : []))));
  const chain: Term[] = [];
  let cameIn: Term | null = null;
  let last: Term | null = null;
  let unknownSince: number | null = null;
  for (const { seq, facts } of entries) {
    for (const one of facts) {
      if (one.fact === 'reading' && pieces.has(one.of)) {
        const term = termOf(seq, -1, one.reading, balances);
        if (term && chain.length === 0 && (one.state === 'as received' || one.state === 'cleaned and dry')) {
          [cameIn, unknownSince] = [{ ...term, sign: 1 }, null];
        } else if (term) last = term;
      }
      const sign = one.fact === 'flow' && one.from !== 'outside' && !one.whole ? directionOf(one, pieces) : 0;
      if (one.fact !== 'flow' || sign === 0) continue;
      const term = one.reading ? termOf(seq, sign, one.reading, balances) : null;
      if (term) chain.push(term);
      else unknownSince ??= seq;
    }
  }
  const expected = cameIn && unknownSince === null ? sumOf([cameIn, ...chain]) : null;
  const closed = cameIn && last && chain.length > 0 ? closure([cameIn, ...chain, last], { unweighed: unknownSince !== null }) : null;
  const state = closed === null || closed.verdict === 'not checked' ? 'open' : closed.verdict === 'does not agree' ? 'off' : 'level';
  const [added, removed] = [1, -1].map((side) => chain.filter(({ sign }) => sign === side)) as [Term[], Term[]];
  return {
    cameIn,
    added,
    removed,
    last,
    expected,
    unknownSince,
    closed,
    state,
    sentence: sentenceOf({ cameIn, expected, unknownSince, closed }),
  };
}

/** By when it happened, then by when it was written; corrections stand in for what they correct. */
function inOrder(kept: readonly Kept[]): readonly Ordered[] {
  const corrections = correctionsIn(kept);
  return kept
    .map(({ seq, hash, leaf }) => {
      const patches = corrections.get(hash);
      return { seq, at: Number(patches?.get('occurredAt') ?? leaf.occurredAt), facts: factsOf(leaf, patches) };
    })
    .sort((a, b) => a.at - b.at || a.seq - b.seq);
}

const directionOf = ({ from, to }: Extract<Fact, { fact: 'flow' }>, pieces: ReadonlySet<string>): 1 | -1 | 0 =>
  pieces.has(to) === pieces.has(from) ? 0 : pieces.has(to) ? 1 : -1;

function termOf(seq: number, sign: 1 | -1, reading: Reading, balances: Balances): Term | null {
  const ng = netNg(reading);
  if (ng === null) return null;
  const term = { id: `entry ${seq}`, seq, sign, ng, worth: worthOf(reading, balances) };
  return reading.stepNg === undefined ? term : { ...term, stepNg: reading.stepNg };
}

/** Half-width of an amount that no balance showed: a tenth of it (common practice, no source). */
const ESTIMATE_SHARE = 10;

function worthOf(reading: Reading, balances: Balances): Worth {
  const balance = reading.balance === undefined ? undefined : balances.get(reading.balance);
  if (!balance || reading.balance === undefined)
    return worthOfEstimate(reading.ng - reading.ng / ESTIMATE_SHARE, reading.ng + reading.ng / ESTIMATE_SHARE);
  const { unit, ranges, repeatabilityNg } = balance;
  const parameters = assumedParameters({
    id: reading.balance,
    unit,
    ranges,
    ...(repeatabilityNg === undefined ? {} : { repeatabilityNg }),
  });
  return worthOfReading(parameters, reading.ng, { epoch: 'in service', repeats: 1 + (reading.repeats?.length ?? 0) });
}

function sumOf(terms: readonly Term[]): { readonly ng: MassNg; readonly uG: number } {
  const { lossNg, uG } = closure(terms);
  return { ng: lossNg, uG };
}

function sentenceOf({
  cameIn,
  expected,
  unknownSince,
  closed,
}: Pick<JobReckoning, 'cameIn' | 'expected' | 'unknownSince' | 'closed'>): string {
  if (!cameIn) return 'Not weighed as it came in: nothing can be checked by weight.';
  const words = (ng: number) => formatMassWithUnit(massNg(ng), 'g', decimalsOfStep(cameIn.stepNg ?? massNg(10_000_000), 'g'));
  const came = `${words(cameIn.ng)} came in.`;
  if (unknownSince !== null) return `${came} What is left cannot be known since entry ${unknownSince}, which was not weighed.`;
  if (!closed) return expected && expected.ng !== cameIn.ng ? `${came} By reckoning ${words(expected.ng)} is in the piece.` : came;
  const gap =
    closed.lossNg === 0
      ? 'nothing is missing from the sum'
      : closed.lossNg > 0
        ? `${words(closed.lossNg)} less than reckoned`
        : `${words(-closed.lossNg)} more than reckoned`;
  return `${VERDICT_WORDS[closed.verdict]}: ${gap}. A loss of ${words(Math.round(closed.note.detectableG * 1e9))} would have shown.`;
}
