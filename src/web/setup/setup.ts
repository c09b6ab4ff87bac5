// Setup: what the shop has, its people's PINs, and the recovery sheet of the signing seed.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Hono } from 'hono';
import { RecoverySheet } from '../../../views/recovery-sheet.tsx';
import { PasswordFirst, SetupView } from '../../../views/setup.tsx';
import type { Posted, Problem } from '../../book/codec.ts';
import { hex } from '../../log/bytes.ts';
import { formatVerifierKey } from '../../log/note.ts';
import { sha256 } from '../../store/crypto.ts';
import type { Ref } from '../../units/ids.ts';
import { goTo, holdsSecret, respond } from '../form/negotiate.ts';
import { first, readPosted } from '../form/posted.ts';
import { passwordTrouble } from '../form/write.ts';
import { wordsFor } from '../job/words.ts';
import { type Ctx, type Env, policyFor, type Resource, thingsOf, type Web, whoAsks } from '../session/context.ts';
import { begin } from '../session/sign-in.ts';
import { sectionsOf } from './setup-lists.ts';

export const setup: Resource = (web) => {
  const app = new Hono<Env>();
  app.get('/setup', (c) => page(web, c, []));
  app.post('/setup/pin', async (c) => {
    const { posted } = await readPosted(c);
    const problems = await setSecrets(web, c, posted);
    return problems.length > 0 ? page(web, c, problems) : goTo(c, '/setup');
  });
  app.post('/setup/tries', async (c) => {
    const person = first((await readPosted(c)).posted, 'person') as Ref<'person'>;
    if (person === whoAsks(c).id) return page(web, c, [{ field: 'person', say: 'Your own wait ends by itself. Choose somebody else.' }]);
    await web.access.clearPins(person);
    return goTo(c, '/setup');
  });
  app.get('/setup/recovery-sheet', (c) => passwordFirst(c, []));
  app.post('/setup/recovery-sheet', async (c) => {
    const wrong = await passwordTrouble(web, c, (await readPosted(c)).posted);
    if (wrong) return passwordFirst(c, [wrong]);
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

/** Gives somebody a new PIN, an owner a new password, or both, once the owner who asks has typed theirs; what is wrong otherwise. */
async function setSecrets(web: Web, c: Ctx, posted: Posted): Promise<readonly Problem[]> {
  const [person, pin, secret] = [first(posted, 'person') as Ref<'person'>, first(posted, 'pin'), first(posted, 'newPassword')];
  const whose = (await thingsOf(web, 'person')).find(({ id, role }) => id === person && role !== 'left');
  if (!whose) return [{ field: 'person', say: 'Choose whose it is.' }];
  if (!/^\d{4,8}$/.test(pin) && !(pin === '' && secret !== '')) return [{ field: 'pin', say: 'A PIN is 4 to 8 figures.' }];
  if (secret !== '' && whose.role !== 'owner') return [{ field: 'newPassword', say: 'Only an owner has a password. Leave it empty.' }];
  if (secret !== '' && secret.length < 10) return [{ field: 'newPassword', say: 'Choose at least 10 characters. Four words will do.' }];
  const wrong = await passwordTrouble(web, c, posted);
  if (wrong) return [wrong];
  if (pin !== '') await web.access.setCredential(person, 'pin', pin);
  if (secret !== '') await web.access.setCredential(person, 'password', secret);
  if (person === whoAsks(c).id) await begin(web, c, person);
  return [];
}

const passwordFirst = (c: Ctx, problems: readonly Problem[]): Promise<Response> =>
  respond(c, {
    title: 'Recovery sheet',
    status: problems.length > 0 ? 422 : 200,
    json: { problems },
    body: PasswordFirst({
      title: 'Recovery sheet',
      say: 'It shows the signing seed: whoever has it can sign in the name of this ledger. Print it where nobody else reads along.',
      ...{ action: '/setup/recovery-sheet', button: 'Show the sheet', problems },
    }),
  });

async function page(web: Web, c: Ctx, problems: readonly { field: string; say: string }[]): Promise<Response> {
  const people = await thingsOf(web, 'person');
  const sections = await sectionsOf(web, policyFor(c), people);
  return respond(c, {
    title: 'Setup',
    current: '/setup',
    status: problems.length > 0 ? 422 : 200,
    json: { sections, problems },
    body: SetupView({
      sections,
      people: people.filter(({ role }) => role !== 'left').map((person) => [person.id, wordsFor(web, person)]),
      problems,
    }),
  });
}
