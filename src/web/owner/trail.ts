// The trail: who wrote what when, the check of the log, and the export.
import { Hono } from 'hono';
import { stream } from 'hono/streaming';
import { type Checked, TrailView } from '../../../views/trail.tsx';
import { ENTRIES } from '../../entries/index.ts';
import { trailBack } from '../../queries/entries.ts';
import { exportLines } from '../../store/transfer.ts';
import { UNSEEN } from '../../store/unseen.ts';
import { respond } from '../form/negotiate.ts';
import { shownLines } from '../job/ledger-lines.ts';
import { wordsFor } from '../job/words.ts';
import { wholeNumber } from '../session/address.ts';
import { type Ctx, type Env, policyFor, type Resource, thingsOf, type Web } from '../session/context.ts';
import { openChecking } from './checking.ts';

const PAGE = 100;

export const trail: Resource = (web) => {
  const app = new Hono<Env>();
  const checking = openChecking(web);
  app.get('/trail', (c) => page(web, c, checking.state()));
  app.post('/trail/check', async (c) => page(web, c, await checking.ask()));
  app.get('/export.jsonl', (c) => {
    c.header('Content-Type', 'application/jsonl; charset=utf-8');
    c.header('Content-Disposition', 'attachment; filename="lemel.jsonl"');
    return stream(c, (out) =>
      web.store.snapshot(async (read) => {
        for await (const line of exportLines(read, web.store.log)) await out.write(`${line}\n`);
      }),
    );
  });
  return app;
};

async function page(web: Web, c: Ctx, checked: Checked | null): Promise<Response> {
  const before = wholeNumber(c.req.query('before')) ?? 0;
  const only = { by: c.req.query('by') ?? '', type: c.req.query('type') ?? '' };
  const from = before > 0 ? before : Number.MAX_SAFE_INTEGER;
  const { kept, older } = await trailBack(web.store, from, only, PAGE);
  const lines = await shownLines(web, policyFor(c), kept);
  return respond(c, {
    title: 'Trail',
    current: '/trail',
    json: { entries: kept.map(({ leaf, hash }) => ({ hash, leaf })), checked, older },
    body: TrailView({
      lines: lines.toReversed(),
      older: older === null ? null : `/trail?${new URLSearchParams({ ...only, before: String(older) })}`,
      checked,
      unseen: UNSEEN.map(({ say }) => say),
      only,
      people: (await thingsOf(web, 'person')).map((person) => [person.id, wordsFor(web, person)] as const),
      types: Object.values(ENTRIES).map(({ type, form }) => [type, form.title] as const),
      canExport: ['owner', 'auditor'].includes(c.get('person')?.role ?? ''),
    }),
  });
}
