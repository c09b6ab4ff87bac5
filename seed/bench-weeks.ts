// Two months at both benches: small jobs, and every sixth day the skins emptied and weighed. Bench 2 loses a little more each week.
import { type Chance, chanceOf } from './chance.ts';
import { ISOLDE, PRIYA, SHOP_NAME, TOBIAS } from './shop.ts';
import { at, goesHome, type Scene, type Story, story, type Telling, takesIn, tell } from './story.ts';

const BENCHES = [
  { by: ISOLDE, bench: 'bench 1', skin: 'skin of bench 1', drift: 0 },
  { by: TOBIAS, bench: 'bench 2', skin: 'skin of bench 2', drift: 0.45 },
] as const;
type Bench = (typeof BENCHES)[number];
const [WEEKS, OPEN_DAYS, JOBS_A_WEEK] = [8, 6, 2];
/** Filings that reach the skin; the rest is polish, wash and floor (common practice, no source). */
const CAUGHT = 0.9;

const NAMES = ['Ingram', 'Thirza', 'Ambrose', 'Lettice', 'Corin', 'Saffron', 'Evander', 'Marigold'] as const;
const FAMILIES = ['Pell', 'Quickley', 'Tarrant', 'Mossop', 'Yarrow', 'Dench', 'Coldwell', 'Sparr'] as const;
const WHAT = ['Plain wedding ring', 'Court ring', 'Keeper ring', 'Twisted ring', 'Heavy signet ring', 'Engraved band'] as const;

/** A small job: what is cut and added in hundredths of a gram, what is said, and the price. */
const KINDS = [
  { step: 'size-up', method: 'insert', cut: [0, 0], added: [16, 38], price: '£48' },
  { step: 'size-down', method: 'cut', cut: [18, 36], added: [0, 0], price: '£42' },
  { step: 'half-shank', method: 're-shank', cut: [36, 62], added: [52, 84], price: '£165' },
] as const;

interface SmallJob {
  readonly name: string;
  readonly week: number;
  readonly bench: Bench;
  readonly story: Story;
  /** Loss in hundredths of a gram: what came in and was added, less what was cut and went out. */
  readonly lost: number;
}

const grams = (hundredths: number) => `${(hundredths / 100).toFixed(2)} g`;

function smallJob(chance: Chance, week: number, bench: Bench, index: number): SmallJob {
  const name = `${bench.bench}, week ${week + 1}, job ${index + 1}`;
  const pick = <const A extends readonly [unknown, ...unknown[]]>(what: string, of: A) => chance.oneOf(`${name} ${what}`, of);
  const between = (what: string, [low, high]: readonly [number, number]) => chance.between(`${name} ${what}`, low, high);
  const kind = pick('kind', KINDS);
  const [received, cut, added] = [between('received', [360, 820]), between('cut', kind.cut), between('added', kind.added)];
  const solder = between('solder', [1, 2]);
  const lost = Math.round((cut + added) * 0.02 + between('lost', [0, 2]) + bench.drift * week);
  const weighed = { received, cut, added, solder, finished: received - cut + added + solder - lost };
  const customer = {
    name: `${pick('name', NAMES)} ${pick('family', FAMILIES)}`,
    phone: `07700 900${300 + week * 20 + index * 4 + BENCHES.indexOf(bench)}`,
  };
  const description = `${pick('what', WHAT)}, 18ct yellow`;
  const started = 50 - week * OPEN_DAYS - index * 2;
  return { name, week, bench, lost, story: story(name, ...scenesOf({ kind, weighed, customer, description, bench, started, index })) };
}

interface Told {
  readonly kind: (typeof KINDS)[number];
  /** In hundredths of a gram. */
  readonly weighed: Readonly<Record<'received' | 'cut' | 'added' | 'solder' | 'finished', number>>;
  readonly customer: { readonly name: string; readonly phone: string };
  readonly description: string;
  readonly bench: Bench;
  /** So many days ago. */
  readonly started: number;
  readonly index: number;
}
const GOLD = { metal: 'gold-750' } as const;

function scenesOf({ kind, weighed, customer, description, bench, started, index }: Told): readonly Scene[] {
  const day = (after: number) => `${started - after} days ago`;
  const piece = { kind: 'ring', description, parts: [{ part: 'shank', ...GOLD }], stones: 0, weight: grams(weighed.received) } as const;
  const work = { steps: [kind.step, 'polish'], price: kind.price, promise: day(4), cutMetal: 'credit', oldParts: 'shop' } as const;
  const weight = grams(weighed.finished);
  return [
    at(`${day(0)} ${10 + index}:20`, PRIYA, ...takesIn({ customer, piece, work })),
    at(`${day(1)} ${11 + index}:05`, bench.by, tell('taken', { of: 'job', from: 'the counter' }), ...workOf(kind, weighed)),
    at(
      `${day(1)} ${11 + index}:50`,
      bench.by,
      tell('piece_weighed', { state: 'finished', weight }),
      tell('piece_checked', { stones: 0, seats: 'none', marks: 'readable' }),
      tell('work_finished'),
    ),
    at(`${day(3)} ${13 + index}:15`, PRIYA, ...goesHome({ stones: 0, weight, taker: customer.name })),
  ];
}

function workOf({ step, method }: Told['kind'], { cut, added, solder }: Told['weighed']): readonly Telling[] {
  return [
    ...(cut > 0 ? [tell('metal_cut', { ...GOLD, weight: grams(cut), lot: '18ct yellow lot', part: 'shank' })] : []),
    ...(added > 0 ? [tell('metal_added', { ...GOLD, stock: '18ct yellow wire', weight: grams(added), what: 'shank' })] : []),
    tell('metal_added', { ...GOLD, stock: '18ct yellow solder', weight: `${grams(solder)} by difference`, what: 'solder' }),
    tell('piece_sized', { method, from: step === 'size-down' ? 'N' : 'L', to: 'M' }),
  ];
}

/** What a bench let fall in a week, in thousandths of a gram, as the skin gives it up. */
function caught(chance: Chance, jobs: readonly SmallJob[], bench: Bench, week: number): number {
  const lost = jobs.filter((job) => job.bench === bench && job.week === week).reduce((sum, job) => sum + job.lost, 0);
  return Math.max(3, Math.round(lost * 10 * CAUGHT) + chance.between(`${bench.skin} ${week}`, -2, 2));
}

function skinWeek(bench: Bench, week: number, thousandths: number): Scene {
  const weight = `${(thousandths / 1000).toFixed(3)} g on the fine balance`;
  const begun = tell('lemel_gathered', { skin: bench.skin, bench: `Skin of ${bench.bench}`, metal: 'gold-750', weight });
  const emptied = tell('skin_emptied', { skin: bench.skin, lot: '18ct yellow lot', metal: 'gold-750', weight });
  return at(`${44 - week * OPEN_DAYS} days ago 17:20`, bench.by, ...(week === 0 ? [begun, emptied] : [emptied]));
}

const chance = chanceOf(SHOP_NAME);
const weeks = Array.from({ length: WEEKS }, (_, week) => week);
export const SMALL_JOBS: readonly SmallJob[] = weeks.flatMap((week) =>
  BENCHES.flatMap((bench) => Array.from({ length: JOBS_A_WEEK }, (_, index) => smallJob(chance, week, bench, index))),
);

/** The skins of both benches, week by week; they belong to the shop. */
export const skinScenes: readonly Scene[] = weeks.flatMap((week) =>
  BENCHES.map((bench) => skinWeek(bench, week, caught(chance, SMALL_JOBS, bench, week))),
);
