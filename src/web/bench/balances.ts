// Balances: what each may show and how far it may be out, its daily checks, ten readings of one weight, and the weighings a failed check puts in doubt.
import { Hono } from 'hono';
import { BalanceView } from '../../../views/balance.tsx';
import type { Posted } from '../../book/codec.ts';
import type { Thing } from '../../ledger/thing.ts';
import type { Check } from '../../projections/balances.ts';
import { thingAt } from '../../queries/things.ts';
import { formatInstant, instant } from '../../units/dates.ts';
import { decimalsOfStep, formatMassWithUnit, type MassUnit, massNg } from '../../units/mass.ts';
import { type BalanceParameters, permissibleError } from '../../weighing/balance.ts';
import { showFormPage } from '../form/form-page.ts';
import { respond } from '../form/negotiate.ts';
import { receiveForm } from '../form/submit.ts';
import { balanceStory } from '../job/balance-story.ts';
import { cautionWords } from '../job/cautions.ts';
import { type Ctx, type Env, policyFor, type Resource, type Web } from '../session/context.ts';
import { checkOf, fine, TEN, type Typed, tenReadingsOf, weightLastTime } from './balance-forms.ts';
import { inDoubt } from './doubted.ts';

export const balances: Resource = (web) => {
  const app = new Hono<Env>();
  app.get('/balances/:balance', async (c) => {
    const balance = await balanceAt(web, c);
    return balance ? page(web, c, balance) : c.notFound();
  });
  for (const [path, formOf, typedFor] of [
    ['check', checkOf, weightLastTime],
    ['repeatability', tenReadingsOf, async (): Typed => [['rows.readings', [String(TEN)]]]],
  ] as const) {
    app.get(`/balances/:balance/${path}`, async (c) => {
      const balance = await balanceAt(web, c);
      if (!balance) return c.notFound();
      const typed: Posted = new Map([['shown.balance', [balance.id]], ...(await typedFor(web, balance))]);
      return showFormPage(web, c, formOf(balance), { typed });
    });
    app.post(`/balances/:balance/${path}`, async (c) => {
      const balance = await balanceAt(web, c);
      return balance ? receiveForm(web, c, formOf(balance)) : c.notFound();
    });
  }
  return app;
};

const balanceAt = ({ store }: Web, c: Ctx): Promise<Thing | null> => thingAt(store, c.req.param('balance') ?? '', 'balance');

async function page(web: Web, c: Ctx, balance: Thing): Promise<Response> {
  const policy = policyFor(c);
  const { balances: known } = await balanceStory(web.store);
  const parameters = policy.parameters.get(balance.id);
  const checks = known.checksOf(balance.id).toReversed();
  const doubted = await inDoubt(web, c, balance.id, known);
  const unit = balance.balance?.unit ?? 'g';
  const lastGood = checks.find(({ result }) => result !== 'fail');
  return respond(c, {
    title: balance.says.name ?? 'Balance',
    current: '/setup',
    json: { balance, parameters, checks, doubted },
    body: BalanceView({
      id: balance.id,
      name: balance.says.name ?? 'Balance',
      facts: factsOf(balance, parameters, unit),
      errors: parameters ? errorsOf(parameters, unit) : [],
      checks: checks.slice(0, 30).map((check) => checkLine(check, policy.zone)),
      lastGood: lastGood ? formatInstant(instant(lastGood.atMs), policy.zone) : null,
      failing: checks[0]?.result === 'fail',
      doubted,
      caution: cautionWords('weights-trade', policy.country),
    }),
  });
}

const checkLine = ({ seq, atMs, result, deviationNg, allowedNg, certifiedNg }: Check, zone: string) => ({
  seq,
  result,
  at: formatInstant(instant(atMs), zone),
  words: `${fine(certifiedNg, 'g')}: off by ${fine(deviationNg, 'g')}, ${fine(allowedNg, 'g')} allowed`,
});

function factsOf(balance: Thing, parameters: BalanceParameters | undefined, unit: MassUnit): readonly (readonly [string, string])[] {
  const { says, balance: plate } = balance;
  const mass = (ng: number) => formatMassWithUnit(massNg(ng), unit, decimalsOfStep(massNg(ng), unit));
  const ranges = (plate?.ranges ?? []).map(({ maxNg, stepNg }) => ['Up to', `${mass(maxNg)}, by d = ${mass(stepNg)}`] as const);
  if (!parameters) return ranges;
  const { sNg, readings } = parameters.repeatability;
  const told = says.repeatability ?? plate?.repeatabilityNg;
  const from = told === undefined ? 'assumed: one step' : Number.isFinite(readings) ? `from ${readings} readings` : 'as its paper says';
  return [
    ['Class', says.class === 'none' || says.class === undefined ? 'not verified; judged as class II' : says.class],
    ...ranges,
    ['Verification step e', `${mass(parameters.eNg)}${says.verificationStep === undefined ? ', taken as d' : ''}`],
    ['Repeatability s', `${fine(sNg, unit)}, ${from}`],
    ...(says.number === undefined ? [] : [['Maker’s number', says.number] as const]),
    ...(says.certificate === undefined ? [] : [['Calibration paper', says.certificate] as const]),
    ['Verified for trade', says.verifiedUntil === undefined ? 'not said' : `until ${says.verifiedUntil}, by your inspector`],
  ];
}

const SHARES = [0.01, 0.1, 0.25, 0.5, 1];

/** How far it may be out at some loads, when verified and in service. */
function errorsOf({ accuracyClass, eNg, ranges }: BalanceParameters, unit: MassUnit) {
  const largestNg = ranges.at(-1)?.maxNg ?? massNg(0);
  return SHARES.flatMap((share) => {
    const loadNg = massNg(Math.round(largestNg * share));
    const error = permissibleError(accuracyClass, eNg, loadNg);
    return error
      ? [
          {
            load: formatMassWithUnit(loadNg, unit, 2),
            initial: `± ${fine(error.initialNg, unit)}`,
            inService: `± ${fine(error.inServiceNg, unit)}`,
          },
        ]
      : [];
  });
}
