// The stones of a job: whether each is here, and which it is.
import { Hono } from 'hono';
import { StonesView } from '../../../views/stones.js';
import { BACKINGS, CUTS, SEAT_STATES, SPECIES } from '../../book/stone-words.js';
import { stonesWords } from '../../book/words.js';
import { countsThatDiffer, stonesOf } from '../../projections/job-stones.js';
import { entriesOf } from '../../queries/entries.js';
import { caratWords } from '../../weighing/reading.js';
import { jobThings } from '../form/form.js';
import { respond } from '../form/negotiate.js';
import { mayWrite, whoAsks } from '../session/context.js';
import { jobAt } from './job-at.js';
export const stones = (web) => {
  const app = new Hono();
  app.get('/jobs/:job/stones', async (c) => {
    const job = await jobAt(web, c);
    if (!job) return c.notFound();
    const kinds = new Map((await jobThings(web, job.id)).map(({ id, kind }) => [id, kind]));
    const found = stonesOf(await entriesOf(web.store, job.id), (id) => kinds.get(id));
    const bag = job.says.bag ?? '';
    const isOpen = (job.status === 'open' || job.status === 'agreed') && mayWrite(whoAsks(c));
    const write = isOpen ? `/jobs/${job.id}/write/` : null;
    const rows = found.seats.map((seat) => rowOf(seat, bag, write));
    const trouble = troubleWith(found, rows);
    return respond(c, {
      title: `Stones of ${bag}`,
      json: { job: job.id, bag, ...found, trouble },
      body: StonesView({
        job: job.id,
        bag,
        rows,
        counted: countWords(found),
        trouble,
        doing: write === null ? [] : DOING.map(([type, words]) => [`${write}${type}`, words]),
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
];
const word = (words, code) => (code === undefined ? '' : (words[code] ?? code));
function rowOf(seat, bag, write) {
  const { letter, says, where, stones: number, events } = seat;
  const backing = says.backing && says.backing !== 'open' ? `${word(BACKINGS, says.backing)} back` : '';
  const parts = [
    number > 1 ? `${number} × ${word(SPECIES, says.species) || 'stones'}` : word(SPECIES, says.species),
    says.cut === 'not seen' ? '' : word(CUTS, says.cut),
    says.sizeMm && `${says.sizeMm}\u00a0mm`,
    backing,
    says.state === 'sound' ? '' : word(SEAT_STATES, says.state),
  ];
  return {
    ...{ letter, where, stones: number },
    paper: letter === '' ? '' : `${bag}-${letter}`,
    seat: says.seat ?? '',
    what: parts.filter(Boolean).join(', ') || 'not looked at yet',
    cut: says.cut ?? 'not seen',
    events: events.map((event) => ({ seq: event.seq, words: eventWords(event) })),
    next: write === null ? null : nextFor(seat, write),
  };
}
/** One stone comes out and goes back by itself; a group is counted on its form. */
function nextFor({ id, says, where, stones: number, events }, write) {
  if (id === null || where === 'gone home') return null;
  const isGroup = says.noted !== undefined || number > 1;
  const it = isGroup ? `packet=${id}` : `stone=${id}&stones=1`;
  if (where !== 'out') return [`${write}stone_unset?${it}`, 'Take it out'];
  const isWeighed = events.some(({ reading }) => reading !== null);
  return isWeighed ? [`${write}stone_set?${it}`, 'Set it'] : [`${write}stone_weighed?of=${id}`, 'Weigh it'];
}
const EVENTS = {
  noted: 'noted',
  out: 'taken out',
  supplied: 'supplied',
  weighed: 'weighed',
  set: 'set',
  home: 'gone home',
};
const eventWords = ({ what, reading }) => (reading ? `${EVENTS[what]}, ${caratWords(reading)}` : EVENTS[what]);
function countWords({ inPieces, out }) {
  if (inPieces === null) return 'Nobody has counted the stones of this job yet.';
  return `By what was written: ${stonesWords(inPieces)} in the piece, ${out === 0 ? 'none' : stonesWords(out)} out.`;
}
/** What does not agree, naming the seats it may be about. */
function troubleWith(found, rows) {
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
