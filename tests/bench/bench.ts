// `npm run bench`: every goal of speed and size beside its figure. `--size 10000,100000` chooses the shops, `--shops FOLDER` keeps them,
// `--write` puts the table into the README. Ratios are of one run; absolute times are the machine's.
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { ROOT } from '../../src/machine.ts';
import { appendFigures } from './append.ts';
import { atMost, type Figure, median, quantile, table, writeInto } from './figures.ts';
import { jobPageFigure, letterFigures } from './job-page.ts';
import { pagesOf, serve } from './served.ts';
import { type BenchShop, benchShop } from './shop.ts';
import { balanceFigures, checkFigure } from './whole.ts';

const { values } = parseArgs({
  options: {
    size: { type: 'string', default: '10000,100000' },
    shops: { type: 'string', default: join(ROOT, '.build-bench', 'shops') },
    only: { type: 'string', default: '' },
    write: { type: 'boolean', default: false },
  },
});
const sizes = values.size.split(',').map(Number);
if (sizes.some((size) => !Number.isSafeInteger(size) || size < 1000)) {
  process.stderr.write('--size takes numbers of entries from 1000 up, with commas between: --size 10000,100000\n');
  process.exit(2);
}
const say = (text: string) => process.stderr.write(`${text}\n`);
const wanted = (part: string) => values.only === '' || values.only.split(',').includes(part);
const ASKED = 40;
const MIXED = 5000;

interface Served {
  readonly size: number;
  readonly startS: number;
  readonly memoryMb: number;
  readonly pages: Readonly<Record<string, readonly number[]>>;
}

async function visit(shop: BenchShop, size: number): Promise<Served> {
  const pages = await pagesOf(shop);
  const served = await serve(shop);
  say(`${size}: every finished job reckoned ${(await served.settled()).toFixed(1)} s after the start`);
  const times: Record<string, number[]> = {};
  for (const [name, paths] of Object.entries(pages)) {
    const of: number[] = [];
    times[name] = of;
    const ask = async (n: number) => served.ask(paths[n % paths.length] ?? '/');
    for (let n = 0; n < 3; n++) await ask(n);
    for (let n = 0; n < ASKED; n++) of.push(await ask(n + 3));
    say(`${size}: ${name} ${median(of).toFixed(1)} ms, p99 ${quantile(of, 0.99).toFixed(1)} ms`);
  }
  const all = Object.values(pages);
  for (let n = 0; n < MIXED; n++) {
    const paths = all[n % all.length] ?? [];
    await served.ask(paths[Math.floor(n / all.length) % paths.length] ?? '/');
  }
  const memoryMb = served.memoryMb();
  await served.stop();
  return { size, startS: served.startS, memoryMb, pages: times };
}

function servedFigures(visits: readonly Served[]): readonly Figure[] {
  const [small, large] = [visits[0], visits.at(-1)];
  if (!small || !large) return [];
  const flat = Object.entries(large.pages).map(
    ([name, times]): Figure => ({
      what: `${name}: median at ${large.size} / at ${small.size}`,
      unit: '×',
      samples: [median(times) / median(small.pages[name] ?? [])],
      ...atMost(1.2),
    }),
  );
  const slow = Object.entries(large.pages).map(
    ([name, times]): Figure => ({ what: `${name}: p99 at ${large.size}`, unit: 'ms', samples: [quantile(times, 0.99)], ...atMost(100) }),
  );
  const memory = {
    what: `memory after ${MIXED} mixed requests at ${large.size}`,
    unit: 'MB',
    samples: [large.memoryMb],
    ...atMost(220),
  } as const;
  const start = { what: `start at ${large.size}: to the first answer`, unit: 's', samples: [large.startS], ...atMost(3) } as const;
  return [...flat, ...slow, memory, start];
}

const figures: Figure[] = [];
if (wanted('append')) figures.push(...(await appendFigures(join(ROOT, 'drizzle'))));
const shops: BenchShop[] = [];
for (const size of sizes) {
  const dir = join(values.shops, `${size}`);
  if (!existsSync(dir)) say(`writing a shop of ${size} entries`);
  shops.push(await benchShop(dir, size, (entries) => say(`${entries} of ${size}`)));
}
const last = shops.at(-1);
if (last && wanted('whole')) {
  figures.push(await checkFigure(last, 3));
  figures.push(...(await balanceFigures(shops.at(Math.min(1, shops.length - 1)) ?? last, 3)));
}
if (last && wanted('job')) figures.push(await jobPageFigure(), ...(await letterFigures(last)));
if (wanted('pages')) {
  const visits: Served[] = [];
  for (const [index, shop] of shops.entries()) visits.push(await visit(shop, sizes[index] ?? 0));
  figures.push(...servedFigures(visits));
}
const text = table(figures, sizes, new Date().toISOString().slice(0, 10));
process.stdout.write(`${text}\n`);
if (values.write) writeInto(join(ROOT, 'README.md'), text);
