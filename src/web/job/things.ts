// A lot, stock, skin, balance or place: what is known of it, and the entries that made it so.
import { Hono } from 'hono';
import { ThingView } from '../../../views/thing.tsx';
import { sumOf } from '../../ledger/thing.ts';
import { thingOf } from '../../store/shelf.ts';
import { decimalsOfStep, formatMassWithUnit, massNg } from '../../units/mass.ts';
import { respond } from '../form/negotiate.ts';
import { type Env, policyFor, type Resource } from '../session/context.ts';
import { entriesOf, ledgerLines } from './ledger-lines.ts';
import { wordsFor } from './words.ts';

export const things: Resource = (web) => {
  const app = new Hono<Env>();
  app.get('/things/:thing', async (c) => {
    const [row] = await web.store.read('SELECT state FROM thing WHERE id = ?', [c.req.param('thing')]);
    if (!row) return c.notFound();
    const thing = thingOf(row);
    if (thing.stream !== thing.id && thing.kind !== 'balance' && thing.kind !== 'place') return c.redirect(`/jobs/${thing.stream}`, 303);
    if (thing.kind === 'balance') return c.redirect(`/balances/${thing.id}`, 303);
    if (thing.kind === 'job') return c.redirect(`/jobs/${thing.id}`, 303);
    const kept = (await entriesOf(web, thing.stream)).filter(
      ({ leaf }) => thing.stream === thing.id || Object.values(leaf.data).includes(thing.id),
    );
    const lines = await ledgerLines(web, policyFor(c), kept);
    const sum = sumOf(thing.posted);
    const decimals = decimalsOfStep(massNg(thing.stepNg || 10_000_000), 'g');
    const holds = ['lot', 'stock', 'skin'].includes(thing.kind);
    const weight = !holds ? null : 'ng' in sum ? formatMassWithUnit(sum.ng, 'g', decimals) : `not known since entry ${sum.unknownSince}`;
    const name = wordsFor(web, thing);
    return respond(c, {
      title: name,
      json: { thing, entries: lines },
      body: ThingView({ name, kind: thing.kind, weight, lines: [...lines].reverse() }),
    });
  });
  return app;
};
