// The stones of a job: whether each is here, and which it is.
import { Hono } from 'hono';
import type { StoneRow } from '../../../views/charts/seats.tsx';
import { StonesView } from '../../../views/stones.tsx';
import { BACKINGS, CUTS, SEAT_STATES, SPECIES } from '../../book/stone-words.ts';
import { stonesWords } from '../../book/words.ts';
import { type JobReckoning, reckonJob } from '../../projections/job-reckoning.ts';
import { countsThatDiffer, type JobStones, type Seat, type StoneEvent, stonesOf } from '../../projections/job-stones.ts';
import { entriesOf } from '../../queries/entries.ts';
import { benchPapers, benchStone, UNFIT_WORDS } from '../../reckoning/stone-words.ts';
import { massNg } from '../../units/mass.ts';
import { caratWords } from '../../weighing/reading.ts';
import { jobThings } from '../form/form.ts';
import { respond } from '../form/negotiate.ts';
import { type Env, mayWrite, type Resource, whoAsks } from '../session/context.ts';
import { balanceStory } from './balance-story.ts';
import { jobAt } from './job-at.ts';

export const stones: Resource = (web) => {
  const app = new Hono<Env>();
  app.get('/jobs/:job/stones', async (c) => {
    const job = await jobAt(web, c);
    if (!job) return c.notFound();
    const kinds = new Map((await jobThings(web, job.id)).map(({ id, kind }) => [id, kind]));
    const kept = await entriesOf(web.store, job.id);
    const found = stonesOf(kept, (id) => kinds.get(id));
    const reckoned = reckonJob(kept, { balances: (await balanceStory(web.store)).balances, size: 0 });
    const bag = job.says.bag ?? '';
    const isOpen = (job.status === 'open' || job.status === 'agreed') && mayWrite(whoAsks(c));
    const write = isOpen ? `/jobs/${job.id}/write/` : null;
    const rows = found.seats.map((seat) => ({ ...rowOf(seat, bag, write), weights: weightsOf(seat, reckoned) }));
    const papers = papersOf(found, reckoned);
    const trouble = troubleWith(found, rows);
    return respond(c, {
      title: `Stones of ${bag}`,
      json: { job: job.id, bag, ...found, trouble, weights: reckoned.stones, papers },
      body: StonesView({
        job: job.id,
        bag,
        rows,
        counted: countWords(found),
        trouble,
        papers,
        doing: write === null ? [] : DOING.map(([type, words]) => [`${write}${type}`, words] as const),
      }),
    });
  });
  return app;
};

const DOING = [
  ['setting_noted', 'Note a seat'],
  ['stone_unset', 'Take stones out and paper them'],
  ['stone_weighed', 'Weigh loose stones'],
  ['stone_set', 'Set stones'],
  ['piece_checked', 'Count the piece'],
] as const;

const word = (words: Readonly<Record<string, string>>, code: string | undefined): string =>
  code === undefined ? '' : (words[code] ?? code);

function rowOf(seat: Seat, bag: string, write: string | null): Omit<StoneRow, 'weights'> {
  const { letter, says, where, stones: number, loose, events } = seat;
  const backing = says.backing && says.backing !== 'open' ? `${word(BACKINGS, says.backing)} back` : '';
  const parts = [
    number > 1 ? `${number} × ${word(SPECIES, says.species) || 'stones'}` : word(SPECIES, says.species),
    says.cut === 'not seen' ? '' : word(CUTS, says.cut),
    says.sizeMm && `${says.sizeMm}\u00a0mm`,
    backing,
    says.state === 'sound' ? '' : word(SEAT_STATES, says.state),
  ];
  return {
    ...{ letter, where, stones: number, loose },
    paper: letter === '' ? '' : `${bag}-${letter}`,
    seat: says.seat ?? '',
    what: parts.filter(Boolean).join(', ') || 'not looked at yet',
    cut: says.cut ?? 'not seen',
    events: events.map((event) => ({ seq: event.seq, words: eventWords(event, number) })),
    next: write === null ? null : nextFor(seat, write),
  };
}

/** One stone comes out and goes back by itself; a group is counted on its form. */
function nextFor({ id, says, where, stones: number, events }: Seat, write: string): StoneRow['next'] {
  if (id === null || where === 'gone home') return null;
  const isGroup = says.noted !== undefined || number > 1;
  const it = isGroup ? `packet=${id}` : `stone=${id}&stones=1`;
  if (where !== 'out') return [`${write}stone_unset?${it}`, 'Take it out'];
  const isWeighed = events.some(({ reading }) => reading !== null);
  return isWeighed ? [`${write}stone_set?${it}`, 'Set it'] : [`${write}stone_weighed?of=${id}`, 'Weigh it'];
}

/** What its first and last weight say together, where it was weighed twice. */
function weightsOf({ id }: Seat, { stones: checks }: JobReckoning): string | null {
  const { before, after, compared, alsoShare, unfit } = checks.find(({ thing }) => thing === id) ?? {};
  if (unfit) return UNFIT_WORDS[unfit];
  if (!before || !after || !compared) return null;
  return benchStone(before.ng, after.ng, before.stepNg ?? massNg(200_000), compared, alsoShare ?? null);
}

/** What weight could do if the papers of the stones that are out were mixed up. */
function papersOf({ seats }: JobStones, { papers }: JobReckoning): string | null {
  const out = papers.map(({ thing, isTold }) => ({
    letter: seats.find(({ id }) => id === thing)?.letter ?? '',
    isTold,
  }));
  const letters = (told: boolean) => out.filter(({ isTold }) => isTold === told).map(({ letter }) => letter);
  return benchPapers(letters(true), letters(false));
}

const EVENTS: Readonly<Record<StoneEvent['what'], string>> = {
  noted: 'noted',
  out: 'taken out',
  supplied: 'supplied',
  weighed: 'weighed',
  set: 'set',
  home: 'gone home',
};
const eventWords = ({ what, stones: some, reading }: StoneEvent, all: number): string =>
  `${some > 0 && some < all ? `${some} ` : ''}${EVENTS[what]}${reading ? `, ${caratWords(reading)}` : ''}`;

function countWords({ inPieces, out }: JobStones): string {
  if (inPieces === null) return 'Nobody has counted the stones of this job yet.';
  return `By what was written: ${stonesWords(inPieces)} in the piece, ${out === 0 ? 'none' : stonesWords(out)} out.`;
}

/** What does not agree, naming the seats it may be about. */
function troubleWith(found: JobStones, rows: readonly StoneRow[]): readonly { readonly seq: number; readonly say: string }[] {
  const out = rows.filter(({ where }) => where === 'out').map(({ seat, paper }) => seat || paper);
  const empty = rows.filter(({ where }) => where === 'empty').map(({ seat }) => seat);
  const named = [
    out.length > 0 ? `Out by what was written: ${out.join(', ')}.` : '',
    empty.length > 0 ? `Noted as empty: ${empty.join(', ')}.` : '',
  ].filter(Boolean);
  return countsThatDiffer(found).map(({ seq, counted, reckoned }) => ({
    seq,
    say: `${stonesWords(counted)} counted, ${reckoned} expected. ${named.join(' ') || 'Every seat that was noted is full: look at those that were not.'}`,
  }));
}
