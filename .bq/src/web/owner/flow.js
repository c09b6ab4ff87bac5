// The shop's metal over a period for the owner: what flowed where in fine grams, and each bench skin against the jobs above it.
import { Hono } from 'hono';
import { FlowView } from '../../../views/flow.js';
import { familyOf } from '../../book/usual-loss.js';
import { DUST, GONE, JOBS, SUPPLIERS, shopFlow } from '../../projections/flow.js';
import { skinPeriods } from '../../projections/skins.js';
import { told } from '../../projections/told.js';
import { entriesOfPools } from '../../queries/entries.js';
import { ownerJob } from '../../reckoning/words.js';
import { civilDateOf, formatCivilDate, instant } from '../../units/dates.js';
import { formatMassWithUnit, massNg } from '../../units/mass.js';
import { respond } from '../form/negotiate.js';
import { balanceStory } from '../job/balance-story.js';
import { wordsFor } from '../job/words.js';
import { policyFor, thingsOf } from '../session/context.js';
import { lossHistory } from './loss-history.js';
import { daysOf, rangeOf } from './period.js';

const METALS = ['gold', 'silver', 'platinum', 'palladium'];
export const flow = (web) => {
  const app = new Hono();
  app.get('/flow', async (c) => {
    const policy = policyFor(c);
    const entries = told(await entriesOfPools(web.store));
    const { balances } = await balanceStory(web.store);
    const { jobs } = await lossHistory(web);
    const [stocks, skins, lots] = await Promise.all([thingsOf(web, 'stock'), thingsOf(web, 'skin'), thingsOf(web, 'lot')]);
    const pools = [...stocks, ...skins, ...lots];
    const days = daysOf(web, c);
    const ids = new Set(pools.map(({ id }) => id));
    const metals = METALS.flatMap((metal) => {
      const found = shopFlow(entries, metal, ids, jobs, balances.worths, rangeOf(days, policy));
      return found.flows.length === 0 ? [] : [shown(web, metal, found, { stocks, skins, lots })];
    });
    const places = new Map((await thingsOf(web, 'place')).map(({ id, says }) => [id, says.name ?? '']));
    const page = { ...days, metals, skins: skins.flatMap((skin) => skinShown(skin, entries, jobs, balances.worths, places, policy)) };
    return respond(c, { title: 'Metal through the shop', current: '/owner', json: page, body: FlowView(page) });
  });
  return app;
};
const fineWords = (ng) => formatMassWithUnit(massNg(Math.round(ng)), 'g', 2);
function shown(web, metal, { flows, holdings, unknown }, { stocks, skins, lots }) {
  const ends = { [SUPPLIERS]: 'suppliers', [JOBS]: 'jobs', [DUST]: 'filings and dust', [GONE]: 'out of the shop' };
  const words = new Map([...Object.entries(ends), ...[...stocks, ...skins, ...lots].map((one) => [one.id, wordsFor(web, one)])]);
  const name = (id) => words.get(id) ?? id;
  const used = new Set(flows.flatMap(({ from, to }) => [from, to]));
  const layer = (...ids) => ids.filter((id) => used.has(id)).map((id) => ({ id, words: name(id) }));
  const idsOf = (things) => things.map(({ id }) => id);
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
const between = ({ from, to }, name) => `${name(from)} to ${name(to)}`;
const bandOf = (one, name) => ({
  from: one.from,
  to: one.to,
  value: one.fineNg / 1e9,
  words: `${between(one, name)}: ${fineWords(one.fineNg)}`,
  isReckoned: one.basis !== 'weighed',
});
const rowOf = (one, name) => ({
  words: between(one, name),
  fine: `${fineWords(one.fineNg)} ± ${fineWords(Math.max(1e7, 2e9 * one.uG))}`,
  how:
    one.basis === 'weighed'
      ? `entries${one.unweighed > 0 ? ` (${one.unweighed} not weighed, not in the sum)` : ''}`
      : 'what jobs are short of, weighed by nobody',
  seqs: one.seqs,
});
/** A skin gathers from the jobs at the bench it is named for, or from all of its metal where no bench bears its name. */
function skinShown(skin, entries, jobs, worths, places, policy) {
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
function periodWords({ from, to, jobs, closed }, { zone }) {
  const day = (ms) => formatCivilDate(civilDateOf(instant(ms), zone));
  const gave = fineWords(closed.gave.reduce((sum, { ng }) => sum + ng, 0));
  return `${day(from.atMs)} to ${day(to.atMs)}: ${jobs.length} jobs gave ${gave} by reckoning. ${ownerJob(closed)}`;
}
