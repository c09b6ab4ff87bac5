// What pages say, held against the true masses within what they claim, and against each other.
import { expect } from 'vitest';
import type { Kept } from '../../src/ledger/leaf.ts';
import type { JobReckoning } from '../../src/projections/job-reckoning.ts';
import type { JobStones } from '../../src/projections/job-stones.ts';
import { figuresOf, VERDICT_WORDS } from '../../src/reckoning/words.ts';
import { toStep } from '../../src/units/rounded.ts';
import { expectedFigures } from '../invariants/auditor.ts';
import type { BadDay } from './bad-day.ts';
import { type TrueJob, trueG, type World } from './world.ts';

/** What is claimed to hold 95 times in 100, counted over many shops. */
export const CLAIMS = [
  'expected within its ±',
  'loss within its ±',
  'a loss that would have shown did',
  'no alarm over an honest job',
] as const;
export type Claim = (typeof CLAIMS)[number];
export type Counted = Record<Claim, { held: number; of: number }>;
export const noClaims = (): Counted => Object.fromEntries(CLAIMS.map((claim) => [claim, { held: 0, of: 0 }])) as Counted;

interface JobPage {
  readonly job: { readonly title: string; readonly status: string; readonly bag: string };
  readonly reckoned: JobReckoning;
  readonly entries: readonly unknown[];
  readonly expected: readonly { readonly expected: string | null; readonly known: boolean }[];
}
interface Row {
  readonly id: string;
  readonly bag: string;
  readonly what: string;
  readonly status: string;
}
interface LetterPage {
  readonly bag: string;
  readonly entries: number;
  readonly letter: {
    readonly sentence: string;
    readonly beam: { readonly sentence: string; readonly numbers: readonly { readonly weight: string }[] };
  };
}

function count(claims: Counted, claim: Claim, holds: boolean): void {
  claims[claim].of++;
  if (holds) claims[claim].held++;
}

/** Far beyond any claim: five standard uncertainties, and a step to round. Nothing said may be further from the truth. */
const beyond = (uG: number): number => 5 * uG + 0.01;

/** Holds the pages of one job against the truth and against each other; answers the job's own page. */
export async function checkJob(day: BadDay, one: TrueJob, kept: readonly Kept[], claims: Counted): Promise<JobPage> {
  const page = (await day.json(`/jobs/${one.job}`)) as JobPage;
  const letter = (await day.json(`/jobs/${one.job}/letter?told=yes`)) as LetterPage;
  const stones = (await day.json(`/jobs/${one.job}/stones`)) as JobStones & { readonly bag: string };
  const own = kept.filter(({ leaf }) => leaf.links.some(({ s }) => s === one.job));
  checkAuditor(own, page.reckoned);
  checkTruth(one, page, claims);
  checkStones(one, stones);
  checkAgreement(page, letter, own);
  expect([letter.bag, stones.bag]).toEqual([page.job.bag, page.job.bag]);
  return page;
}

/** Holds every job, and every list that says something of one, against the job's own page. */
export async function checkHouse(day: BadDay, { jobs }: World, kept: readonly Kept[], claims: Counted): Promise<void> {
  const counter = (await day.json('/')) as { jobs: readonly Row[] };
  const owner = (await day.json('/owner')) as {
    heaps: readonly { readonly title: string; readonly rows: readonly { readonly href: string }[] }[];
  };
  const period = (await day.json('/owner/weights?from=2026-01-01&to=2029-01-01')) as {
    rows: readonly { readonly job: string; readonly says: string }[];
  };
  const off: string[] = [];
  for (const one of jobs) {
    const { job, reckoned } = await checkJob(day, one, kept, claims);
    const row = counter.jobs.find(({ id }) => id === one.job);
    if (row) expect([row.bag, row.status]).toEqual([job.bag, job.status]);
    if (row && one.stage === 'agreed') expect(row.what).toBe(job.title);
    if (row && reckoned.state === 'off') off.push(one.job);
    const said = period.rows.find(({ job: id }) => id === one.job)?.says;
    if (said !== undefined && reckoned.closed) expect(said).toBe(VERDICT_WORDS[reckoned.closed.verdict]);
  }
  const listed = owner.heaps.find(({ title }) => title === 'Weights that do not agree')?.rows ?? [];
  expect(listed.map(({ href }) => href.split('/')[2]).sort()).toEqual(off.sort());
}

/** The auditor who reads the leaves with plain loops comes to the figures of the page. */
function checkAuditor(own: readonly Kept[], { cameIn, closed, expected }: JobReckoning): void {
  const found = {
    cameIn: cameIn?.ng ?? null,
    loss: closed === null ? null : closed.verdict === 'not checked' ? closed.verdict : closed.lossNg,
    there: expected?.ng ?? null,
  };
  const history = own.map(({ seq, leaf }) => `${seq} ${leaf.type} ${JSON.stringify(leaf.data)}`).join('\n');
  expect(found, history).toEqual(expectedFigures(own));
}

function checkTruth(one: TrueJob, { reckoned, expected }: JobPage, claims: Counted): void {
  const { cameIn, closed } = reckoned;
  if (cameIn && one.first && !one.first.slipped) expect(Math.abs(cameIn.ng / 1e9 - one.first.massG)).toBeLessThan(0.075);
  if (one.slipped) return;
  const sinceG = one.lostSinceLastG;
  if (one.stage === 'agreed' && reckoned.expected) {
    expect(Math.abs(reckoned.expected.ng / 1e9 - trueG(one) - sinceG), 'in the piece by reckoning').toBeLessThan(
      beyond(reckoned.expected.uG),
    );
  }
  const words = /^([\d.]+) ± ([\d.]+)/.exec(expected[0]?.expected ?? '');
  if (one.stage === 'agreed' && words) {
    const offG = Math.abs(Number(words[1]) - trueG(one) - sinceG);
    expect(offG, `expected ${words[0]}`).toBeLessThan(beyond(Number(words[2]) / 2));
    count(claims, 'expected within its ±', offG <= Number(words[2]) + 0.005);
  }
  const lostG = one.lostAtLastG;
  if (!closed || closed.verdict === 'not checked' || lostG === null || one.first?.slipped) return;
  const offG = Math.abs(closed.lossNg / 1e9 - lostG);
  expect(offG, reckoned.sentence).toBeLessThan(beyond(closed.uG));
  count(claims, 'loss within its ±', offG <= 2 * closed.uG + 0.005);
  if (lostG >= closed.action.detectableG) count(claims, 'a loss that would have shown did', closed.verdict === 'does not agree');
  if (!one.wronged) count(claims, 'no alarm over an honest job', closed.verdict !== 'does not agree');
}

/** Counts are exact: the record's own, which is the truth and whatever left unwritten. */
function checkStones(one: TrueJob, { inPieces, out }: JobStones): void {
  if (one.stage !== 'agreed') return;
  expect([inPieces, out]).toEqual([one.stonesG.length + one.stolenStones, one.packet?.stonesG.length ?? 0]);
}

/** Every weight in grams that the letter tells stands on the job's own page too. */
function checkAgreement({ reckoned }: JobPage, { entries, letter }: LetterPage, own: readonly Kept[]): void {
  expect(entries).toBe(own.length);
  const { cameIn, last, expected, closed, added, removed, weights } = reckoned;
  const sum = (terms: readonly { readonly ng: number }[]) => terms.reduce((all, { ng }) => all + ng, 0);
  const masses = [cameIn, last, expected, ...added, ...removed].map((one) => one?.ng ?? 0);
  const { gap, give, shows, dustMost } = closed ? figuresOf(closed) : {};
  // What was read of the piece stands on its page among the entries.
  const read = own.flatMap(({ leaf }) =>
    'weight' in leaf.data && 'piece' in leaf.data ? [(leaf.data.weight as unknown as { readonly ng: number }).ng] : [],
  );
  const cut = own.flatMap(({ leaf }) =>
    leaf.type === 'metal_cut' && leaf.data.weight ? [leaf.data.weight as { readonly ng: number }] : [],
  );
  const allowed = new Set([...masses, ...read, sum(added), sum(removed), sum(cut)].map((ng) => toStep(Math.abs(ng), 10_000_000)));
  const pans = weights.pans.map(({ value }) => value);
  for (const figure of [gap, give, shows, dustMost, ...pans]) if (typeof figure === 'string') allowed.add(figure);
  const told = [letter.sentence, letter.beam.sentence, ...letter.beam.numbers.map(({ weight }) => weight)].join(' ');
  const figures = [...told.matchAll(/\d+\.\d+\u00a0g/g)].map(([figure]) => figure);
  expect(
    figures.filter((figure) => !allowed.has(figure)),
    told,
  ).toEqual([]);
}
