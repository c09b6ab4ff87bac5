// Screens of the shop: the owner makes a link that works once, shown as a code for the tablet's camera; opening it there enrols the tablet.
import { Hono } from 'hono';
import { ulid } from 'ulid';
import { DevicesView, EnrolView } from '../../../views/devices.js';
import { ENTRIES } from '../../entries/index.js';
import { streamSize } from '../../queries/sizes.js';
import { formatInstant, instant } from '../../units/dates.js';
import { refFromBytes } from '../../units/ids.js';
import { SECRETS, without } from '../form/form-page.js';
import { goTo, holdsSecret, respond } from '../form/negotiate.js';
import { first, readPosted } from '../form/posted.js';
import { passwordTrouble } from '../form/write.js';
import { policyFor, whoAsks } from '../session/context.js';
import { isOnLan, keepScreen } from '../session/cookies.js';
import { trouble } from '../session/trouble.js';

const { fields, form } = ENTRIES.device_enrolled;
export const devices = (web) => {
  const app = new Hono();
  app.get('/devices', (c) => page(web, c));
  app.post('/devices', async (c) => {
    const { posted } = await readPosted(c);
    const [name, kind] = [first(posted, 'name').normalize('NFC').trim(), first(posted, 'kind')];
    const problems = ['name', 'kind'].flatMap((field) => {
      const issue = fields[field].schema.safeParse(field === 'name' ? name : kind).error?.issues[0];
      return issue ? [{ field, say: issue.message }] : [];
    });
    const wrong = problems.length > 0 ? null : await passwordTrouble(web, c, posted);
    if (wrong) problems.push(wrong);
    if (problems.length > 0 || !isOnLan(web)) return page(web, c, { problems, typed: without(posted, SECRETS) });
    const link = `${web.baseUrl}/enrol?key=${await web.access.makeEnrolLink({ name, kind, by: whoAsks(c).id })}`;
    return page(web, c, { link, called: name });
  });
  app.post('/devices/end', async (c) => {
    await web.access.endDevice(first((await readPosted(c)).posted, 'device'));
    return goTo(c, '/devices');
  });
  app.get('/enrol', async (c) => {
    const key = c.req.query('key') ?? '';
    const enrolment = await web.access.enrolLink(key);
    holdsSecret(c);
    return enrolment
      ? respond(c, { title: 'Enrol this screen', json: { name: enrolment.name }, body: EnrolView({ link: key, name: enrolment.name }) })
      : used(c);
  });
  app.post('/enrol', async (c) => {
    const key = first((await readPosted(c)).posted, 'key');
    const enrolment = await web.access.enrolLink(key);
    return enrolment && isOnLan(web) && (await enrol(web, c, key, enrolment)) ? goTo(c, '/sign-in') : used(c);
  });
  return app;
};
/** Enrols the browser that asks, writes it down, and gives it its cookie; false where the link was taken in between. */
async function enrol(web, c, link, { name, kind, by }) {
  const { shop } = policyFor(c);
  const device = refFromBytes('place', web.random(16));
  const token = await web.access.enrol(link, device);
  if (token === null) return false;
  const answer = await web.store.record({
    id: ulid(web.clock()).toLowerCase(),
    by,
    // The owner typed the password when the link was made; it is good once and for half an hour.
    auth: 'password',
    device,
    seen: { [shop]: await streamSize(web.store, shop) },
    lines: [{ type: 'device_enrolled', data: { shop, device, name, kind } }],
  });
  if (answer.answer !== 'written') {
    await web.access.endDevice(device);
    return false;
  }
  keepScreen(web, c, token);
  c.set('device', device);
  return true;
}
/** Enrols the browser in which the ledger was started, so that its owner can sign in there. */
export async function enrolFirst(web, c, by) {
  if (!isOnLan(web)) return;
  const enrolment = { name: 'First screen', kind: 'counter', by };
  await enrol(web, c, await web.access.makeEnrolLink(enrolment), enrolment);
}
const used = (c) => trouble(c, 403, 'This link has been used or has expired. Ask the owner for a new one.');
async function page(web, c, { problems = [], typed = new Map(), link, called } = {}) {
  const all = await web.access.devices();
  const { zone } = policyFor(c);
  holdsSecret(c);
  return respond(c, {
    title: 'Screens',
    current: '/setup',
    status: problems.length > 0 ? 422 : 200,
    json: { devices: all, link, problems },
    body: DevicesView({
      devices: all.map(({ id, name, enrolledAt }) => ({ id, name, since: formatInstant(instant(enrolledAt), zone) })),
      onLan: isOnLan(web),
      fields: ['name', 'kind'].map((name) => ({
        name,
        label: form.labels[name],
        control: fields[name].control,
        optional: false,
      })),
      typed,
      problems,
      link: link === undefined ? null : { href: link, name: called ?? '' },
    }),
  });
}
