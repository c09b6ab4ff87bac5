// The way home, in two steps: the stones are counted and who takes it is said; then it is read back and the PIN is asked. A count that
// does not agree stops it and offers the way home with an exception.
import { Hono } from 'hono';
import { ExceptionOffer } from '../../../views/parts/exception.js';
import { wordsIn } from '../../book/us-words.js';
import { inAndOut } from '../../letter/in-and-out.js';
import { entriesOf } from '../../queries/entries.js';
import { thingAt } from '../../queries/things.js';
import { SHEETS } from '../../sheets/index.js';
import { isRef, readBagCode } from '../../units/ids.js';
import { jobThings } from '../form/form.js';
import { showFormPage } from '../form/form-page.js';
import { goTo } from '../form/negotiate.js';
import { sheetForm } from '../form/sheet-form.js';
import { receiveForm } from '../form/submit.js';
import { jobAt } from '../job/job-at.js';
import { policyFor } from '../session/context.js';

/** Both ways home; each says of its own fields what is read aloud and written. */
const WAYS_HOME = {
  'hand-back': (known) => sheetForm(SHEETS['hand-back'], known),
  'hand-back-with-exception': (known) => sheetForm(SHEETS['hand-back-with-exception'], known),
};
export const handBack = (web) => {
  const app = new Hono();
  for (const way of ['hand-back', 'hand-back-with-exception']) {
    const path = `/jobs/:job/${way}`;
    app.get(path, async (c) => {
      const job = await jobAt(web, c);
      return job ? showFormPage(web, c, await formOf(web, c, job, way), { typed: new Map(defaultsFor(c, way)) }) : c.notFound();
    });
    app.post(path, async (c) => {
      const job = await jobAt(web, c);
      return job ? receiveForm(web, c, await formOf(web, c, job, way)) : c.notFound();
    });
  }
  app.get('/b/:bag', (c) => goTo(c, `/bag?code=${encodeURIComponent(c.req.param('bag'))}`));
  app.get('/bag', async (c) => goTo(c, await whereNext(web, c.req.query('code') ?? '')));
  return app;
};
/** A bag that was scanned leads to what is next for it: its finish, its way home, or its job. */
async function whereNext(web, typed) {
  const code = readBagCode(typed.split('/').at(-1) ?? '');
  const bag = code && (await thingAt(web.store, code, 'bag'));
  if (!bag) return `/find?q=${encodeURIComponent(typed)}`;
  const job = (await jobThings(web, bag.stream)).find(({ kind }) => kind === 'job');
  const step = job?.status === 'finished' ? '/hand-back' : job?.status === 'agreed' && job.stonesOut === 0 ? '/finish' : '';
  return `/jobs/${bag.stream}${step}`;
}
const defaultsFor = (c, way) => [
  ['to', ['customer']],
  ['shown', [wordsIn(policyFor(c).words, 'collection slip')]],
  ...(way === 'hand-back' ? [['signed', ['signature']]] : []),
];
/** A packet with worn metal or old parts in it; a group of seats is a packet too, with nothing in it until its stones come out. */
const holdsMetal = ({ kind, stones, posted }) => kind === 'packet' && !stones && (posted.ng !== 0 || Object.keys(posted.open).length > 0);
async function formOf(web, c, job, way) {
  const kept = await entriesOf(web.store, job.id);
  const here = (await jobThings(web, job.id)).filter(({ gone }) => !gone);
  const pieces = here.filter(({ kind }) => kind === 'piece');
  const packets = here.filter(holdsMetal).flatMap(({ id }) => (isRef('packet', id) ? [id] : []));
  const sentence = inAndOut(kept, pieces[0]?.id ?? '');
  const sheet = WAYS_HOME[way](({ piece }) => ({ sentence: inAndOut(kept, piece), packets }));
  const isLast = pieces.length === 1 && job.stonesOut === 0;
  return {
    ...sheet,
    fields: packets.length > 0 ? sheet.fields : Object.fromEntries(Object.entries(sheet.fields).filter(([name]) => name !== 'packets')),
    action: c.req.path,
    job,
    asks: 'pin',
    current: '/',
    extra: [...(isLast ? [['closes', 'yes']] : []), ...(pieces.length === 1 ? [['piece', pieces[0]?.id ?? '']] : [])],
    above: ExceptionOffer({
      sentence,
      job: job.id,
      bag: job.says.bag ?? '',
      offers: way === 'hand-back' && c.req.method === 'POST',
    }),
    next: (from) => `/jobs/${job.id}?written=${from}`,
  };
}
