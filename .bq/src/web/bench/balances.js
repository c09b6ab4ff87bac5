// Balances: what each may show and how far it may be out, its daily checks, ten readings of one weight, and the weighings a failed check puts in doubt.
import { Hono } from 'hono';
import { BalanceView } from '../../../views/balance.js';
import { thingAt } from '../../queries/things.js';
import { formatInstant, instant } from '../../units/dates.js';
import { decimalsOfStep, formatMassWithUnit, massNg } from '../../units/mass.js';
import { permissibleError } from '../../weighing/balance.js';
import { showFormPage } from '../form/form-page.js';
import { respond } from '../form/negotiate.js';
import { receiveForm } from '../form/submit.js';
import { balanceStory } from '../job/balance-story.js';
import { cautionWords } from '../job/cautions.js';
import { policyFor } from '../session/context.js';
import { checkOf, fine, TEN, tenReadingsOf } from './balance-forms.js';
import { inDoubt } from './doubted.js';
export const balances = (web) => {
  const app = new Hono();
  app.get('/balances/:balance', async (c) => {
    const balance = await balanceAt(web, c);
    return balance ? page(web, c, balance) : c.notFound();
  });
  for (const [path, formOf] of [
    ['check', checkOf],
    ['repeatability', tenReadingsOf],
  ]) {
    app.get(`/balances/:balance/${path}`, async (c) => {
      const balance = await balanceAt(web, c);
      if (!balance) return c.notFound();
      const typed = new Map([
        ['shown.balance', [balance.id]],
        ['rows.readings', [String(TEN)]],
      ]);
      return showFormPage(web, c, formOf(balance), { typed });
    });
    app.post(`/balances/:balance/${path}`, async (c) => {
      const balance = await balanceAt(web, c);
      return balance ? receiveForm(web, c, formOf(balance)) : c.notFound();
    });
  }
  return app;
};
const balanceAt = ({ store }, c) => thingAt(store, c.req.param('balance') ?? '', 'balance');
async function page(web, c, balance) {
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
const checkLine = ({ seq, atMs, result, deviationNg, allowedNg, certifiedNg }, zone) => ({
  seq,
  result,
  at: formatInstant(instant(atMs), zone),
  words: `${fine(certifiedNg, 'g')}: off by ${fine(deviationNg, 'g')}, ${fine(allowedNg, 'g')} allowed`,
});
function factsOf(balance, parameters, unit) {
  const { says, balance: plate } = balance;
  const mass = (ng) => formatMassWithUnit(massNg(ng), unit, decimalsOfStep(massNg(ng), unit));
  const ranges = (plate?.ranges ?? []).map(({ maxNg, stepNg }) => ['Up to', `${mass(maxNg)}, by d = ${mass(stepNg)}`]);
  if (!parameters) return ranges;
  const { sNg, readings } = parameters.repeatability;
  const told = says.repeatability ?? plate?.repeatabilityNg;
  const from = told === undefined ? 'assumed: one step' : Number.isFinite(readings) ? `from ${readings} readings` : 'as its paper says';
  return [
    ['Class', says.class === 'none' || says.class === undefined ? 'not verified; judged as class II' : says.class],
    ...ranges,
    ['Verification step e', `${mass(parameters.eNg)}${says.verificationStep === undefined ? ', taken as d' : ''}`],
    ['Repeatability s', `${fine(sNg, unit)}, ${from}`],
    ...(says.number === undefined ? [] : [['Maker’s number', says.number]]),
    ...(says.certificate === undefined ? [] : [['Calibration paper', says.certificate]]),
    ['Verified for trade', says.verifiedUntil === undefined ? 'not said' : `until ${says.verifiedUntil}, by your inspector`],
  ];
}
const SHARES = [0.01, 0.1, 0.25, 0.5, 1];
/** How far it may be out at some loads, when verified and in service. */
function errorsOf({ accuracyClass, eNg, ranges }, unit) {
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
