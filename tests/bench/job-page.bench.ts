// How long the server takes for the page of a job of 60 entries, against a hand-written template over the same data.
// Run with `npx vitest bench --run --config tests/vitest.config.ts --root . tests/bench/job-page`; no part of the tests.
import { bench, describe } from 'vitest';
import { line } from '../shop.ts';
import { openSite } from '../web/site.ts';

const site = await openSite();
const { shop } = site;
const [job, piece] = [shop.newRef('job'), shop.newRef('piece')];
const terms = { dust: 'shop', cutMetal: 'shop', oldParts: 'shop', terms: '1', agreedBy: 'signature' };
await shop.write(
  line('job_opened', { job, bag: shop.newBag(), broughtBy: 'customer', owner: 'customer', channel: 'counter' }),
  line('piece_received', {
    ...{ job, piece, kind: 'ring', description: 'Band', stones: 0 },
    parts: [{ part: 'all', metal: 'gold-750' }],
    weight: shop.grams('6.82'),
  }),
  line('work_agreed', { job, steps: ['polish'], priceKind: 'free', promise: '2026-12-08', ...terms }),
);
for (let n = 3; n < 60; n++) await shop.write(line('piece_weighed', { piece, state: 'polished', weight: shop.grams('6.82') }));
const owner = await site.as('owner');
const page = async (accept: string) => (await owner.get(`/jobs/${job}`, { accept })).text();

interface Told {
  readonly entries: readonly {
    readonly seq: number;
    readonly said: string;
    readonly at: string;
    readonly by: string;
    readonly weight: string;
  }[];
}
const byHand = ({ entries }: Told) =>
  entries
    .map(({ seq, said, at, by, weight }) => `<li><b>${said}</b><span>${weight}</span><small>${seq} · ${at} · ${by}</small></li>`)
    .join('');

describe('a job of 60 entries', () => {
  bench('the page', async () => {
    await page('text/html');
  });
  bench('a hand-written template over the same data', async () => {
    byHand(JSON.parse(await page('application/json')) as Told);
  });
});
