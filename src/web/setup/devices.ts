// Screens of the shop: the owner makes a link that works once, shown as a code for the tablet's camera; opening it there enrols the tablet.
import { Hono } from 'hono';
import { ulid } from 'ulid';
import { DevicesView, EnrolView } from '../../../views/devices.tsx';
import { type Problem, plainText } from '../../book/codec.ts';
import { ENTRIES, type EntryName } from '../../entries/index.ts';
import { streamSize } from '../../queries/sizes.ts';
import type { Device, Enrolment } from '../../store/devices.ts';
import { formatInstant, instant } from '../../units/dates.ts';
import { refFromBytes } from '../../units/ids.ts';
import { SECRETS, without } from '../form/form-page.ts';
import { goTo, holdsSecret, respond } from '../form/negotiate.ts';
import { first, readPosted } from '../form/posted.ts';
import { passwordTrouble } from '../form/write.ts';
import { type Ctx, type Env, type Policy, policyFor, policyOf, type Resource, type Web, whoAsks } from '../session/context.ts';
import { isOnLan, keepScreen } from '../session/cookies.ts';
import { trouble } from '../session/trouble.ts';

const { fields, form } = ENTRIES.device_enrolled;

export const devices: Resource = (web) => {
  const app = new Hono<Env>();
  app.get('/devices', (c) => page(web, c));
  app.post('/devices', async (c) => {
    const { posted } = await readPosted(c);
    const [name, kind] = [plainText(first(posted, 'name')), first(posted, 'kind')];
    const problems: Problem[] = (['name', 'kind'] as const).flatMap((field) => {
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
    const { posted } = await readPosted(c);
    const [one] = (await screensOf(web, c)).filter(({ id }) => id === first(posted, 'device'));
    const wrong = one ? await passwordTrouble(web, c, posted) : { field: 'device', say: 'Choose the screen that is no longer used.' };
    if (wrong || !one) return page(web, c, { problems: wrong ? [wrong] : [], typed: without(posted, SECRETS) });
    await recordOf(web, policyFor(c).shop, whoAsks(c).id, one.id, 'device_withdrawn', { name: one.name });
    await web.access.endDevice(one.id);
    return goTo(c, '/devices');
  });
  app.get('/enrol', async (c) => {
    const key = c.req.query('key') ?? '';
    const enrolment = await web.access.enrolLink(key);
    holdsSecret(c);
    return enrolment
      ? respond(c, { title: 'Enrol this screen', json: { name: enrolment.name }, body: EnrolView({ link: key, name: enrolment.name }) })
      : used(web, c);
  });
  app.post('/enrol', async (c) => {
    const key = first((await readPosted(c)).posted, 'key');
    const enrolment = await web.access.enrolLink(key);
    return enrolment && isOnLan(web) && (await enrol(web, c, key, enrolment)) ? goTo(c, '/sign-in') : used(web, c);
  });
  return app;
};

/** Enrols the browser that asks, writes it down, and gives it its cookie; false where the link was taken in between. */
async function enrol(web: Web, c: Ctx, link: string, { name, kind, by }: Enrolment): Promise<boolean> {
  const policy = await policyOf(web);
  const device = refFromBytes('place', web.random(16));
  const token = policy && (await web.access.enrol(link, device));
  if (!policy || !token) return false;
  if (!(await recordOf(web, policy.shop, by, device, 'device_enrolled', { name, kind }))) {
    await web.access.endDevice(device);
    return false;
  }
  keepScreen(web, c, token);
  c.set('device', device);
  return true;
}

/** Writes what became of a screen; the owner typed the password for it, or for the link that enrols it once. */
async function recordOf(
  web: Web,
  shop: Policy['shop'],
  by: Enrolment['by'],
  device: string,
  type: EntryName,
  more: object,
): Promise<boolean> {
  const answer = await web.store.record({
    ...{ id: ulid(web.clock()).toLowerCase(), by, auth: 'password', device },
    seen: { [shop]: await streamSize(web.store, shop) },
    lines: [{ type, data: { shop, device, ...more } }],
  });
  const isWritten = answer.answer === 'written';
  if (isWritten) web.note({ happened: type === 'device_enrolled' ? 'screen_enrolled' : 'screen_withdrawn', person: by, screen: device });
  return isWritten;
}

/** Screens in use: what the ledger says is one, and the file of sign-in knows. */
const screensOf = async (web: Web, c: Ctx): Promise<readonly Device[]> =>
  (await web.access.devices()).filter(({ id }) => policyFor(c).screens.has(id));

/** Enrols the browser in which the ledger was started, so that its owner can sign in there. */
export async function enrolFirst(web: Web, c: Ctx, by: Enrolment['by']): Promise<void> {
  if (!isOnLan(web)) return;
  const enrolment = { name: 'First screen', kind: 'counter', by };
  await enrol(web, c, await web.access.makeEnrolLink(enrolment), enrolment);
}

function used(web: Web, c: Ctx): Promise<Response> {
  web.note({ happened: 'link_refused' });
  return trouble(c, 403, 'This link has been used or has expired. Ask the owner for a new one.');
}

interface Shown {
  readonly problems?: readonly Problem[];
  readonly typed?: ReadonlyMap<string, readonly string[]>;
  readonly link?: string;
  readonly called?: string;
}

async function page(web: Web, c: Ctx, { problems = [], typed = new Map(), link, called }: Shown = {}): Promise<Response> {
  const all = await screensOf(web, c);
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
      fields: (['name', 'kind'] as const).map((name) => ({
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
