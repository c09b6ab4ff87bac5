// Who is at the bench: sign in by name and PIN, lock, and unlock where one was.
import { Hono } from 'hono';
import { SignIn } from '../../../views/sign-in.js';
import { base64url } from '../../log/bytes.js';
import { goTo, respond } from '../form/negotiate.js';
import { first, readPosted } from '../form/posted.js';
import { secretTrouble } from '../form/write.js';
import { localPath } from './address.js';
import { thingsOf } from './context.js';
import { dropSession, keepScreen, keepSession, screenToken } from './cookies.js';
import { trouble } from './trouble.js';
export const signIn = (web) => {
  const app = new Hono();
  app.get('/sign-in', async (c) => {
    const unknown = c.get('device') === null && c.get('policy') !== null;
    return unknown ? notEnrolled(c) : page(web, c, localPath(c.req.query('back') ?? '/'), []);
  });
  app.post('/sign-in', async (c) => {
    const { posted } = await readPosted(c);
    const back = localPath(first(posted, 'back'));
    const person = first(posted, 'person');
    const device = c.get('device');
    if (device === null) return notEnrolled(c);
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
    if (session) await web.access.endSession(session.token);
    dropSession(web, c);
    return goTo(c, '/sign-in');
  });
  return app;
};
/** Begins a bench session for a person who has shown who they are. */
export async function begin(web, c, person) {
  keepSession(web, c, await web.access.beginSession(person, c.get('device') ?? 'none'));
}
const notEnrolled = (c) => trouble(c, 403, 'This screen is not enrolled. Ask the owner for a link: Setup, Screens.');
async function staffOf(web) {
  const people = (await thingsOf(web, 'person')).filter(({ role }) => role !== undefined && role !== 'left');
  return people.map(({ id }) => [id, web.directory.nameOf(id) ?? 'somebody']);
}
async function page(web, c, back, problems, person = '') {
  const staff = await staffOf(web);
  const ready = await Promise.all(staff.map(([id]) => web.access.hasCredential(id)));
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
