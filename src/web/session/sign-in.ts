// Who is at the bench: sign in by name and PIN, lock, and unlock where one was.
import { Hono } from 'hono';
import { SignIn } from '../../../views/sign-in.tsx';
import { base64url } from '../../log/bytes.ts';
import type { Ref } from '../../units/ids.ts';
import { goTo, respond } from '../form/negotiate.ts';
import { first, readPosted } from '../form/posted.ts';
import { secretTrouble } from '../form/write.ts';
import { localPath } from './address.ts';
import { type Ctx, type Env, type Resource, thingsOf, type Web } from './context.ts';
import { dropSession, keepScreen, keepSession, screenToken } from './cookies.ts';
import { trouble } from './trouble.ts';

export const signIn: Resource = (web) => {
  const app = new Hono<Env>();
  app.get('/sign-in', async (c) => {
    const unknown = c.get('device') === null && c.get('policy') !== null;
    return unknown ? notEnrolled(web, c) : page(web, c, localPath(c.req.query('back') ?? '/'), []);
  });
  app.post('/sign-in', async (c) => {
    const { posted } = await readPosted(c);
    const back = localPath(first(posted, 'back'));
    const person = first(posted, 'person') as Ref<'person'>;
    const device = c.get('device');
    if (device === null) return notEnrolled(web, c);
    const staff = await staffOf(web);
    if (!staff.some(([id]) => id === person)) return page(web, c, back, [{ field: 'person', say: 'Choose your name.' }]);
    const screen = screenToken(web, c) ?? base64url(web.random(32));
    const wrong = await secretTrouble(web, person, screen, 'pin', first(posted, 'pin'));
    if (wrong) return page(web, c, back, [wrong], person);
    const session = c.get('session');
    if (session) await web.access.endSession(session.token);
    await begin(web, c, person);
    keepScreen(web, c, screen);
    return goTo(c, back);
  });
  app.post('/lock', async (c) => {
    const session = c.get('session');
    if (session) {
      await web.access.endSession(session.token);
      web.note({ happened: 'locked', person: session.person, screen: session.device });
    }
    dropSession(web, c);
    return goTo(c, '/sign-in');
  });
  return app;
};

/** Begins a bench session for a person who has shown who they are. */
export async function begin(web: Web, c: Ctx, person: Ref<'person'>): Promise<void> {
  const screen = c.get('device') ?? 'none';
  keepSession(web, c, await web.access.beginSession(person, screen));
  web.note({ happened: 'signed_in', person, screen });
}

function notEnrolled(web: Web, c: Ctx): Promise<Response> {
  web.note({ happened: 'screen_unknown' });
  return trouble(c, 403, 'This screen is not enrolled. Ask the owner for a link: Setup, Screens.');
}

async function staffOf(web: Web): Promise<readonly (readonly [string, string])[]> {
  const people = (await thingsOf(web, 'person')).filter(({ role }) => role !== undefined && role !== 'left');
  return people.map(({ id }) => [id, web.directory.nameOf(id) ?? 'somebody'] as const);
}

async function page(web: Web, c: Ctx, back: string, problems: readonly { field: string; say: string }[], person = ''): Promise<Response> {
  const staff = await staffOf(web);
  const ready = await Promise.all(staff.map(([id]) => web.access.hasCredential(id as Ref<'person'>)));
  return respond(c, {
    title: 'Sign in',
    status: problems.length > 0 ? 422 : 200,
    json: { staff: staff.map(([id, name]) => ({ id, name })), problems },
    body: SignIn({
      staff,
      back,
      problems,
      chosen: person || (staff.length === 1 ? (staff[0]?.[0] ?? '') : ''),
      nobody: !ready.includes(true),
      begun: c.get('policy') !== null,
    }),
  });
}
