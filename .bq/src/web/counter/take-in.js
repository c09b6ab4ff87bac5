// Pieces taken in: the short ticket, wait and take, and the full path; each read back before it is written, in one command.
import { Hono } from 'hono';
import { SHEETS } from '../../sheets/index.js';
import { civilDateOf, formatCivilDate, instant } from '../../units/dates.js';
import { formatMoney } from '../../units/money.js';
import { jobThings } from '../form/form.js';
import { showFormPage } from '../form/form-page.js';
import { first, readPosted } from '../form/posted.js';
import { submitForm } from '../form/submit.js';
import { withPhotos } from '../job/photos.js';
import { policyFor } from '../session/context.js';
import { customerWords, settled, whoseForm } from './customers.js';
import { issueSlip } from './slip.js';
export const takeIn = (web) => {
  const app = new Hono();
  const page = (path, sheet, defaults, more) => {
    app.get(path, async (c) => {
      const after = await afterJob(web, c);
      const whose = await whoseForm(web, c, path, undefined, after?.customer);
      const typed = new Map([...defaults(c), ...(after?.typed ?? []), ...whose.typed]);
      return showFormPage(web, c, formOf(web, c, path, sheet, { ...more(c), ...whose }), { typed });
    });
    app.post(path, async (c) => {
      const { posted, problems } = await withPhotos(web, await readPosted(c, 'photographs'));
      const whose = await whoseForm(web, c, path, posted);
      const of = formOf(web, c, path, sheet, { ...more(c), ...whose });
      return problems.length > 0 ? showFormPage(web, c, of, { typed: posted, problems }) : submitForm(web, c, of, settled(posted));
    });
  };
  const bag = async (c, posted) => {
    const slip = `/jobs/${first(posted, 'job')}/slip/${await issueSlip(web, c, first(posted, 'job'))}`;
    return first(posted, 'agreed') === 'another' ? `/ticket?after=${first(posted, 'job')}` : slip;
  };
  const also = ['another', 'Agreed, and another piece for the same customer'];
  page('/ticket', SHEETS.ticket, smallDefaults(web), (c) => ({
    also,
    days: { promise: daysFor(today(web, c)) },
    next: (_, posted) => bag(c, posted),
  }));
  page('/take-in', SHEETS['take-in'], fullDefaults(web), (c) => ({
    days: { promise: daysFor(today(web, c)) },
    next: (_, posted) => bag(c, posted),
  }));
  page(
    '/wait',
    SHEETS.wait,
    () => new Map([['priceKind', ['fixed']]]),
    () => ({ asks: 'pin', next: (from, posted) => `/jobs/${first(posted, 'job')}?written=${from}` }),
  );
  return app;
};
function formOf(web, c, action, sheet, more) {
  const known = (data) => ({ customer: customerWords(web, data), today: today(web, c) });
  const { check, readBack, lines } = sheet;
  return {
    fields: sheet.fields,
    form: sheet.form,
    action,
    current: '/',
    next: () => '/',
    ...more,
    check: (data) => [...(data.customer === undefined && action !== '/wait' ? [NOBODY] : []), ...check(data, known(data))],
    readBack: (data) => readBack(data, known(data)),
    lines: (data) => lines(data, known(data)),
  };
}
const NOBODY = { field: 'name', say: 'Look for the customer above, or write the name of a new one.' };
const today = (web, c) => civilDateOf(web.clock(), policyFor(c).zone);
/** Today and the next useful days: in two, four, seven and ten days, none of them a Sunday. */
function daysFor(from) {
  const days = [2, 4, 7, 10].map((ahead) => plus(from, ahead)).map((day) => (new Date(day).getUTCDay() === 0 ? plus(day, 1) : day));
  return [[from, 'Today'], ...[...new Set(days)].map((day) => [day, formatCivilDate(day).replace(/ \d{4}$/, '')])];
}
const DAY_MS = 86_400_000;
const plus = (day, days) => civilDateOf(instant(Date.parse(day) + days * DAY_MS), 'UTC');
const smallDefaults = (web) => (c) =>
  new Map([
    ['priceKind', ['fixed']],
    ['promise', [daysFor(today(web, c))[3]?.[0] ?? '']],
  ]);
/** What most take-ins on the full path begin with. */
const fullDefaults = (web) => (c) =>
  new Map([
    ...smallDefaults(web)(c),
    ...Object.entries({ broughtBy: 'customer', owner: 'customer', channel: 'counter', dust: 'shop', cutMetal: 'customer' }).map(single),
    ...Object.entries({ oldParts: 'customer', agreedBy: 'signature', terms: '1', statedBy: 'customer' }).map(single),
  ]);
const single = ([name, value]) => [name, [value]];
/** What another piece of the same customer keeps of the job before it: who, the day, the price and its kind. */
async function afterJob(web, c) {
  const id = c.req.query('after') ?? '';
  const customer = web.directory.customerOf(id);
  const job = (await jobThings(web, id)).find(({ kind }) => kind === 'job');
  if (!job || customer === undefined) return null;
  const price = job.money.price;
  const kept = { promise: job.promise, priceKind: job.says.priceKind, price: price && formatMoney(price) };
  return {
    customer,
    typed: new Map(Object.entries(kept).flatMap(([name, value]) => (value === undefined ? [] : [[name, [value]]]))),
  };
}
