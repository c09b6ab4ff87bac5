// A lot, stock, skin, balance or place: what is known of it, and the entries that made it so.
import { Hono } from 'hono';
import { ThingView } from '../../../views/thing.js';
import { sumOf } from '../../ledger/thing.js';
import { entryAt, lastOfStream } from '../../queries/entries.js';
import { thingAt } from '../../queries/things.js';
import { decimalsOfStep, formatMassWithUnit, massNg } from '../../units/mass.js';
import { respond } from '../form/negotiate.js';
import { wholeNumber } from '../session/address.js';
import { policyFor } from '../session/context.js';
import { shownLines } from './ledger-lines.js';
import { wordsFor } from './words.js';
export const things = (web) => {
  const app = new Hono();
  app.get('/things/:thing', async (c) => {
    const thing = await thingAt(web.store, c.req.param('thing'));
    if (!thing) return c.notFound();
    if (thing.stream !== thing.id && thing.kind !== 'balance' && thing.kind !== 'place') return c.redirect(`/jobs/${thing.stream}`, 303);
    if (thing.kind === 'balance') return c.redirect(`/balances/${thing.id}`, 303);
    if (thing.kind === 'job') return c.redirect(`/jobs/${thing.id}`, 303);
    const before = wholeNumber(c.req.query('before')) ?? Number.MAX_SAFE_INTEGER;
    const { kept, older } = await entriesAbout(web, thing, before);
    const lines = await shownLines(web, policyFor(c), kept);
    const sum = sumOf(thing.posted);
    const decimals = decimalsOfStep(massNg(thing.stepNg || 10_000_000), 'g');
    const holds = ['lot', 'stock', 'skin'].includes(thing.kind);
    const weight = !holds ? null : 'ng' in sum ? formatMassWithUnit(sum.ng, 'g', decimals) : `not known since entry ${sum.unknownSince}`;
    const name = wordsFor(web, thing);
    return respond(c, {
      title: name,
      json: { thing, entries: lines, older },
      body: ThingView({
        ...{ name, kind: thing.kind, weight },
        lines: lines.toReversed(),
        older: older === null ? null : `/things/${thing.id}?before=${older}`,
      }),
    });
  });
  return app;
};
const PAGE = 100;
/** A lot, stock or skin has a stream of its own; a place has the entry that named it. */
async function entriesAbout(web, { id, stream, begun }, before) {
  if (stream === id) return lastOfStream(web.store, stream, before, PAGE);
  const named = await entryAt(web.store, begun);
  return { kept: named ? [named] : [], older: null };
}
