// Setup: what the shop has, its people's PINs, and the recovery sheet of the signing seed.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Hono } from 'hono';
import { RecoverySheet } from '../../../views/recovery-sheet.js';
import { SetupView } from '../../../views/setup.js';
import { hex } from '../../log/bytes.js';
import { formatVerifierKey } from '../../log/note.js';
import { sha256 } from '../../store/crypto.js';
import { goTo, holdsSecret, respond } from '../form/negotiate.js';
import { first, readPosted } from '../form/posted.js';
import { wordsFor } from '../job/words.js';
import { policyFor, thingsOf } from '../session/context.js';
import { sectionsOf } from './setup-lists.js';
export const setup = (web) => {
  const app = new Hono();
  app.get('/setup', (c) => page(web, c, []));
  app.post('/setup/pin', async (c) => {
    const { posted } = await readPosted(c);
    const person = first(posted, 'person');
    const pin = first(posted, 'pin');
    const known = (await thingsOf(web, 'person')).some(({ id }) => id === person);
    if (!known) return page(web, c, [{ field: 'person', say: 'Choose whose PIN it is.' }]);
    if (!/^\d{4,8}$/.test(pin)) return page(web, c, [{ field: 'pin', say: 'A PIN is 4 to 8 figures.' }]);
    await web.access.setCredential(person, 'pin', pin);
    return goTo(c, '/setup');
  });
  app.get('/setup/recovery-sheet', (c) => {
    const seed = readFileSync(join(web.store.dir, 'keys', 'seed'), 'utf8').trim();
    const vkey = formatVerifierKey(web.store.logKey);
    const fingerprint = hex(sha256(new TextEncoder().encode(vkey)));
    holdsSecret(c);
    return respond(c, {
      title: 'Recovery sheet',
      json: { vkey, fingerprint },
      body: RecoverySheet({ shop: policyFor(c).name, log: web.store.log, seed, vkey, fingerprint }),
    });
  });
  return app;
};
async function page(web, c, problems) {
  const people = await thingsOf(web, 'person');
  const sections = await sectionsOf(web, policyFor(c), people);
  return respond(c, {
    title: 'Setup',
    current: '/setup',
    status: problems.length > 0 ? 422 : 200,
    json: { sections, problems },
    body: SetupView({ sections, people: people.map((person) => [person.id, wordsFor(web, person)]), problems }),
  });
}
