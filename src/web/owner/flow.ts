// The shop's metal over a period for the owner: what flowed where in fine grams, and each bench skin against the jobs above it.
import { Hono } from 'hono';
import { type FlowPage, FlowView } from '../../../views/flow.tsx';
import type { MetalFamily } from '../../book/metals.ts';
import { familyOf } from '../../book/usual-loss.ts';
import type { Thing } from '../../ledger/thing.ts';
import { DUST, type FineFlow, GONE, JOBS, SUPPLIERS, shopFlow } from '../../projections/flow.ts';
import type { LossJob } from '../../projections/loss.ts';
import { type SkinPeriod, skinPeriods } from '../../projections/skins.ts';
import { stockBalance } from '../../projections/stock-periods.ts';
import type { Told } from '../../projections/told.ts';
import { ownerJob } from '../../reckoning/words.ts';
import { dayIn } from '../../units/dates.ts';
import { formatMassWithUnit, massNg } from '../../units/mass.ts';
import { respond } from '../form/negotiate.ts';
import { balanceStory } from '../job/balance-story.ts';
import { wordsFor } from '../job/words.ts';
import { type Env, type Policy, policyFor, type Resource, thingsOf, type Web } from '../session/context.ts';
import { lossHistory } from './loss-history.ts';
import { daysOf, rangeOf } from './period.ts';
import { poolStory } from './pool-story.ts';
import { balanceShown } from './stock-words.ts';

const METALS: readonly MetalFamily[] = ['gold', 'silver', 'platinum', 'palladium'];

export const flow: Resource = (web) => {
  const app = new Hono<Env>();
  app.get('/flow', async (c) => {
    const policy = policyFor(c);
    const { entries } = await poolStory(web.store);
    const { balances } = await balanceStory(web.store);
    const { jobs } = await lossHistory(web);
    const [stocks, skins, lots] = await Promise.all([thingsOf(web, 'stock'), thingsOf(web, 'skin'), thingsOf(web, 'lot')]);
    const pools = [...stocks, ...skins, ...lots];
    const days = daysOf(web, c);
    const ids = new Set(pools.map(({ id }) => id));
    const [fromMs, toMs] = rangeOf(days, policy);
    const metalsOf = new Map(stocks.map(({ id, says }) => [id, says.metal ?? '']));
    const metals = METALS.flatMap((metal): FlowPage['metals'] => {
      const found = shopFlow(entries, metal, ids, jobs, balances.worths, [fromMs, toMs]);
      const counted = stockBalance(entries, metal, metalsOf, balances.worths, toMs);
      const stockName = (id: string) => stocks.find((one) => one.id === id)?.says.name ?? id;
      const balance = balanceShown(counted, fromMs, stockName, dayIn(policy.zone));
      const isSilent = found.flows.length === 0 && balance.says.length === 0;
      return isSilent ? [] : [{ ...shown(web, metal, found, { stocks, skins, lots }), balance }];
    });
    const places = new Map((await thingsOf(web, 'place')).map(({ id, says }) => [id, says.name ?? '']));
    const page = { ...days, metals, skins: skins.flatMap((skin) => skinShown(skin, entries, jobs, balances.worths, places, policy)) };
    return respond(c, { title: 'Metal through the shop', current: '/owner', json: page, body: FlowView(page) });
  });
  return app;
};

type Pools = Readonly<Record<'stocks' | 'skins' | 'lots', readonly Thing[]>>;
const fineWords = (ng: number): string => formatMassWithUnit(massNg(Math.round(ng)), 'g', 2);

function shown(
  web: Web,
  metal: MetalFamily,
  { flows, holdings, unknown }: ReturnType<typeof shopFlow>,
  { stocks, skins, lots }: Pools,
): Omit<Shown, 'balance'> {
  const ends = { [SUPPLIERS]: 'suppliers', [JOBS]: 'jobs', [DUST]: 'filings and dust', [GONE]: 'out of the shop' };
  const words = new Map([...Object.entries(ends), ...[...stocks, ...skins, ...lots].map((one) => [one.id, wordsFor(web, one)] as const)]);
  const name: Name = (id) => words.get(id) ?? id;
  const used = new Set(flows.flatMap(({ from, to }) => [from, to]));
  const layer = (...ids: readonly string[]) => ids.filter((id) => used.has(id)).map((id) => ({ id, words: name(id) }));
  const idsOf = (things: readonly Thing[]) => things.map(({ id }) => id);
  const layers = [layer(SUPPLIERS), layer(...idsOf(stocks)), layer(JOBS), layer(...idsOf(skins), DUST), layer(...idsOf(lots), GONE)];
  return {
    metal: metal.charAt(0).toUpperCase() + metal.slice(1),
    layers: layers.filter((one) => one.length > 0),
    bands: flows.map((one) => bandOf(one, name)),
    rows: flows.map((one) => rowOf(one, name)),
    holdings: holdings
      .filter(({ id }) => !skins.some((skin) => skin.id === id))
      .map(({ id, openingNg, closingNg }) => ({
        words: name(id),
        href: `/things/${id}`,
        opening: fineWords(openingNg),
        closing: fineWords(closingNg),
      })),
    unknown,
  };
}

/** Words for a pool, or for an end of the shop. */
type Name = (id: string) => string;
type Shown = FlowPage['metals'][number];

const between = ({ from, to }: FineFlow, name: Name): string => `${name(from)} to ${name(to)}`;

const bandOf = (one: FineFlow, name: Name): Shown['bands'][number] => ({
  from: one.from,
  to: one.to,
  value: one.fineNg / 1e9,
  words: `${between(one, name)}: ${fineWords(one.fineNg)}`,
  isReckoned: one.basis !== 'weighed',
});

const rowOf = (one: FineFlow, name: Name): Shown['rows'][number] => ({
  words: between(one, name),
  fine: `${fineWords(one.fineNg)} ± ${fineWords(Math.max(1e7, 2e9 * one.uG))}`,
  how:
    one.basis === 'weighed'
      ? `entries${one.unweighed > 0 ? ` (${one.unweighed} not weighed, not in the sum)` : ''}`
      : 'what jobs are short of, weighed by nobody',
  seqs: one.seqs,
});

/** A skin gathers from the jobs at the bench it is named for, or from all of its metal where no bench bears its name. */
function skinShown(
  skin: Thing,
  entries: readonly Told[],
  jobs: readonly LossJob[],
  worths: Parameters<typeof skinPeriods>[3],
  places: ReadonlyMap<string, string>,
  policy: Policy,
): FlowPage['skins'] {
  const family = familyOf(skin.says.metal);
  const ofMetal = jobs.filter((job) => family === 'other' || job.family === family);
  const atBench = ofMetal.filter(({ place }) => place !== null && places.get(place) === skin.says.name);
  const own = entries.filter(({ streams }) => streams.includes(skin.id));
  const periods = skinPeriods(skin.id, own, [...places.values()].includes(skin.says.name ?? '') ? atBench : ofMetal, worths);
  if (periods.length === 0) return [];
  return [
    {
      words: `${skin.says.name ?? 'Skin'}, ${family}`,
      href: `/things/${skin.id}`,
      says: periods.map((one) => periodWords(one, policy)).reverse(),
    },
  ];
}

function periodWords({ from, to, jobs, closed }: SkinPeriod, { zone }: Policy): string {
  const day = dayIn(zone);
  const gave = fineWords(closed.gave.reduce((sum, { ng }) => sum + ng, 0));
  return `${day(from.atMs)} to ${day(to.atMs)}: ${jobs.length} jobs gave ${gave} by reckoning. ${ownerJob(closed)}`;
}
