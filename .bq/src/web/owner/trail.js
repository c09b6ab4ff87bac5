// The trail: who wrote what when, the check of the log, and the export.
import { Hono } from 'hono';
import { stream } from 'hono/streaming';
import { TrailView } from '../../../views/trail.js';
import { ENTRIES } from '../../entries/index.js';
import { base64 } from '../../log/bytes.js';
import { trailBack } from '../../queries/entries.js';
import { exportLines } from '../../store/transfer.js';
import { respond } from '../form/negotiate.js';
import { shownLines } from '../job/ledger-lines.js';
import { wordsFor } from '../job/words.js';
import { wholeNumber } from '../session/address.js';
import { policyFor, thingsOf } from '../session/context.js';

const PAGE = 100;
export const trail = (web) => {
  const app = new Hono();
  app.get('/trail', (c) => page(web, c, null));
  app.post('/trail/check', async (c) => {
    const found = await web.store.check();
    if ('bad' in found) return page(web, c, { whole: false, say: found.bad.say, seq: found.bad.seq });
    const say = `${found.size} entries, whole and unaltered: every one leads to the root that was signed (${found.signatures} signatures).`;
    return page(web, c, { whole: true, say, root: base64(found.root) });
  });
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
async function page(web, c, checked) {
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
      only,
      people: (await thingsOf(web, 'person')).map((person) => [person.id, wordsFor(web, person)]),
      types: Object.values(ENTRIES).map(({ type, form }) => [type, form.title]),
      canExport: ['owner', 'auditor'].includes(c.get('person')?.role ?? ''),
    }),
  });
}
