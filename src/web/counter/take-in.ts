// Pieces taken in: the short ticket, wait and take, and the full path; each read back before it is written, in one command.
import { Hono } from 'hono';
import type { Posted } from '../../book/codec.ts';
import { NO_TERMS } from '../../book/terms.ts';
import { SHEETS } from '../../sheets/index.ts';
import { StorageFault } from '../../store/connection.ts';
import { ReadOnly } from '../../store/guard.ts';
import { type CivilDate, civilDateOf, formatCivilDate, instant } from '../../units/dates.ts';
import { formatMoney } from '../../units/money.ts';
import { jobThings } from '../form/form.ts';
import { type FormOf, READ_BACK_TERMS, showFormPage } from '../form/form-page.ts';
import { first, readPosted } from '../form/posted.ts';
import { type SheetForm, sheetForm } from '../form/sheet-form.ts';
import { submitForm } from '../form/submit.ts';
import { withPhotos } from '../job/photos.ts';
import { type Ctx, type Env, policyFor, type Resource, type Web } from '../session/context.ts';
import { customerWords, settled, whoseForm } from './customers.ts';
import { issueSlip } from './slip.ts';

type KnownOf = (data: Parameters<typeof customerWords>[1]) => AtTakeIn;
type SheetWith = (known: KnownOf) => SheetForm;
/** What a sheet needs beside what was typed: whose it is, in words, the day, and the terms in force. */
interface AtTakeIn {
  readonly customer: string;
  readonly today: CivilDate;
  readonly terms: string;
}

export const takeIn: Resource = (web) => {
  const app = new Hono<Env>();
  const page = (path: string, sheet: SheetWith, defaults: (c: Ctx) => Posted, more: (c: Ctx) => Partial<FormOf>) => {
    app.get(path, async (c) => {
      const after = await afterJob(web, c);
      const whose = await whoseForm(web, c, path, undefined, after?.customer);
      const typed = new Map([...defaults(c), ...(after?.typed ?? []), ...whose.typed]);
      return showFormPage(web, c, formOf(web, c, path, sheet, { ...more(c), ...whose }), { typed });
    });
    app.post(path, async (c) => {
      const { posted, problems } = await withPhotos(web, await readPosted(c, 'photographs'));
      const whose = await whoseForm(web, c, path, posted);
      const of = formOf(web, c, path, sheet, { ...more(c), ...whose }, posted);
      return problems.length > 0 ? showFormPage(web, c, of, { typed: posted, problems }) : submitForm(web, c, of, settled(posted));
    });
  };
  const also = ['another', 'Agreed, and another piece for the same customer'] as const;
  const ticket: SheetWith = (known) => sheetForm(SHEETS.ticket, known);
  page('/ticket', ticket, smallDefaults(web), (c) => ({
    also,
    days: { promise: daysFor(today(web, c)) },
    next: (_, posted) => bagged(web, c, posted),
  }));
  const fullPath: SheetWith = (known) => sheetForm(SHEETS['take-in'], known);
  page('/take-in', fullPath, fullDefaults(web), (c) => ({
    days: { promise: daysFor(today(web, c)) },
    next: (_, posted) => bagged(web, c, posted),
  }));
  page(
    '/wait',
    (known) => sheetForm(SHEETS.wait, known),
    () => new Map([['priceKind', ['fixed']]]),
    () => ({ asks: 'pin', next: (from, posted) => `/jobs/${first(posted, 'job')}?written=${from}` }),
  );
  return app;
};

/** What is agreed names the terms that were read back; whether they are still in force the ledger says. */
function formOf(web: Web, c: Ctx, action: string, sheet: SheetWith, more: Partial<FormOf>, posted?: Posted): FormOf {
  const { terms, termsTexts } = policyFor(c);
  const inForce = terms ?? NO_TERMS;
  const agreed = first(posted ?? new Map(), READ_BACK_TERMS) || inForce;
  const own = sheet((data) => ({ customer: customerWords(web, data), today: today(web, c), terms: agreed }));
  return {
    ...own,
    action,
    current: '/',
    next: () => '/',
    ...more,
    check: (data) => [...(data.customer === undefined && action !== '/wait' ? [NOBODY] : []), ...(own.check?.(data) ?? [])],
    terms: { name: inForce, lines: termsTexts.get(inForce)?.split('\n') ?? [] },
  };
}
/** Where a piece that was taken in goes: to its slip, or to the next one of the same customer. */
async function bagged(web: Web, c: Ctx, posted: Posted): Promise<string> {
  const job = first(posted, 'job');
  const slip = await issueSlip(web, c, job).catch(whyNot);
  if (first(posted, 'agreed') === 'another') return `/ticket?after=${job}`;
  // What was taken in is written, whatever becomes of its slip: that is printed from the job.
  return 'say' in slip ? `/jobs/${job}` : `/jobs/${job}/slip/${slip.size}`;
}

/** Why nothing was written, where that is nobody's mistake. */
function whyNot(error: unknown): { readonly say: string } {
  if (error instanceof ReadOnly || error instanceof StorageFault) return { say: error.message };
  throw error;
}
const NOBODY = { field: 'name', say: 'Look for the customer above, or write the name of a new one.' };

const today = (web: Web, c: Ctx): CivilDate => civilDateOf(web.clock(), policyFor(c).zone);

/** Today and the next useful days: in two, four, seven and ten days, none of them a Sunday. */
function daysFor(from: CivilDate): readonly (readonly [day: string, words: string])[] {
  const days = [2, 4, 7, 10].map((ahead) => plus(from, ahead)).map((day) => (new Date(day).getUTCDay() === 0 ? plus(day, 1) : day));
  return [[from, 'Today'], ...[...new Set(days)].map((day) => [day, formatCivilDate(day).replace(/ \d{4}$/, '')] as const)];
}
const DAY_MS = 86_400_000;
const plus = (day: CivilDate, days: number): CivilDate => civilDateOf(instant(Date.parse(day) + days * DAY_MS), 'UTC');

const smallDefaults =
  (web: Web) =>
  (c: Ctx): Posted =>
    new Map([
      ['priceKind', ['fixed']],
      ['promise', [daysFor(today(web, c))[3]?.[0] ?? '']],
    ]);
/** What most take-ins on the full path begin with. */
const fullDefaults =
  (web: Web) =>
  (c: Ctx): Posted =>
    new Map([
      ...smallDefaults(web)(c),
      ...Object.entries({ broughtBy: 'customer', owner: 'customer', channel: 'counter', dust: 'shop', cutMetal: 'customer' }).map(single),
      ...Object.entries({ oldParts: 'customer', agreedBy: 'signature', statedBy: 'customer' }).map(single),
    ]);
const single = ([name, value]: [string, string]): [string, string[]] => [name, [value]];

/** What another piece of the same customer keeps of the job before it: who, the day, the price and its kind. */
async function afterJob(web: Web, c: Ctx): Promise<{ readonly customer: string; readonly typed: Posted } | null> {
  const id = c.req.query('after') ?? '';
  const customer = web.directory.customerOf(id);
  const job = (await jobThings(web, id)).find(({ kind }) => kind === 'job');
  if (!job || customer === undefined) return null;
  const price = job.money.price;
  const kept = { promise: job.promise, priceKind: job.says.priceKind, price: price && formatMoney(price as never) };
  return {
    customer,
    typed: new Map(Object.entries(kept).flatMap(([name, value]) => (value === undefined ? [] : [[name, [value]] as const]))),
  };
}
