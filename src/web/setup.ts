// Setup: people and their PINs, places, balances, lots, stock; and the recovery sheet of the signing seed.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Hono } from 'hono';
import { RecoverySheet, SetupView } from '../../views/setup.tsx';
import { hex } from '../log/bytes.ts';
import { formatVerifierKey } from '../log/note.ts';
import { sha256 } from '../store/crypto.ts';
import type { Ref } from '../units/ids.ts';
import { type Ctx, type Env, policyFor, type Resource, thingsOf, type Web } from './context.ts';
import { goTo, respond } from './negotiate.ts';
import { first, readPosted } from './posted.ts';
import { wordsFor } from './words.ts';

const SECTIONS = [
  ['person', 'People', 'person_joined'],
  ['place', 'Places', 'place_named'],
  ['balance', 'Balances', 'balance_put_in_service'],
  ['lot', 'Scrap lots', 'lot_opened'],
  ['stock', 'Stock', 'metal_received'],
] as const;

export const setup: Resource = (web) => {
  const app = new Hono<Env>();
  app.get('/setup', (c) => page(web, c, []));
  app.post('/setup/pin', async (c) => {
    const { posted } = await readPosted(c);
    const person = first(posted, 'person') as Ref<'person'>;
    const pin = first(posted, 'pin');
    const known = (await thingsOf(web, 'person')).some(({ id }) => id === person);
    if (!known) return page(web, c, [{ field: 'pin', say: 'Choose whose PIN it is.' }]);
    if (!/^\d{4,8}$/.test(pin)) return page(web, c, [{ field: 'pin', say: 'A PIN is 4 to 8 figures.' }]);
    await web.access.setCredential(person, 'pin', pin);
    return goTo(c, '/setup');
  });
  app.get('/setup/recovery-sheet', (c) => {
    const seed = readFileSync(join(web.store.dir, 'keys', 'seed'), 'utf8').trim();
    const vkey = formatVerifierKey(web.store.logKey);
    const fingerprint = hex(sha256(new TextEncoder().encode(vkey)));
    return respond(c, {
      title: 'Recovery sheet',
      json: { vkey, fingerprint },
      body: RecoverySheet({ shop: policyFor(c).name, log: web.store.log, seed, vkey, fingerprint }),
    });
  });
  return app;
};

async function page(web: Web, c: Ctx, problems: readonly { field: string; say: string }[]): Promise<Response> {
  const sections = await Promise.all(
    SECTIONS.map(async ([kind, title, entry]) => ({
      title,
      add: `/write/${entry}`,
      things: (await thingsOf(web, kind)).map((thing) => ({
        id: thing.id,
        words: wordsFor(web, thing),
        more: thing.role ?? thing.says.metal ?? thing.says.kind ?? '',
      })),
    })),
  );
  const people = (sections[0]?.things ?? []).map(({ id, words }) => [id, words] as const);
  return respond(c, {
    title: 'Setup',
    current: '/setup',
    status: problems.length > 0 ? 422 : 200,
    json: { sections, problems },
    body: SetupView({ sections, people, problems }),
  });
}
