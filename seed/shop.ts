// The invented shop: who works there, where things lie, what they are weighed on, and the metal they work with.
import { at, type Scene, type Story, story, tell } from './story.ts';
import { SHOP_STORY, ZONE } from './telling.ts';

export const SHOP_NAME = 'Marchbank & Renn (demo shop)';
export const ISOLDE = 'Isolde at bench 1';
export const TOBIAS = 'Tobias at bench 2';
export const PRIYA = 'Priya at the counter';
/** Everybody who signs in, by their name in the stories. */
export const STAFF = ['Isolde', 'Tobias', 'Priya'] as const;

const DAY_ONE = '52 days ago';
const place = (called: string, name: string, kind: string, limit?: string) => tell('place_named', { place: called, name, kind, limit });
const stock = (called: string, metal: string, weight: string, batch: string) =>
  tell('metal_received', {
    stock: called,
    name: called,
    metal,
    weight,
    supplier: 'Harrow Vale Bullion',
    batch,
    certificate: `HV ${batch}`,
  });
const lot = (called: string, metal: string) => tell('lot_opened', { lot: called, name: called, metal });

/** A standard weight on the pan of a balance, as every week. */
const checked = (when: string, balance: string, nominal: string, certifiedG: string, shown: string): Scene =>
  at(when, ISOLDE, tell('balance_checked', { balance, nominal, certifiedG, certificate: 'W-2291', shown: `${shown} on the ${balance}` }));

export const theShop: Story = story(
  SHOP_STORY,
  at(
    `${DAY_ONE} 08:00`,
    ISOLDE,
    tell('ledger_started', { owner: 'Isolde', shopName: SHOP_NAME, ownerName: 'Isolde Marchbank' }),
    tell('policy_set', { zone: ZONE, country: 'GB', currency: 'GBP', staffing: 'two', words: 'uk' }),
    tell('person_joined', { person: 'Tobias', role: 'bench', name: 'Tobias Renn' }),
    tell('person_joined', { person: 'Priya', role: 'counter', name: 'Priya Ashdown' }),
    tell('device_enrolled', { device: 'bench 1', name: 'Bench 1', kind: 'bench' }),
    tell('device_enrolled', { device: 'bench 2', name: 'Bench 2', kind: 'bench' }),
    tell('device_enrolled', { device: 'the counter', name: 'Counter', kind: 'counter' }),
  ),
  at(
    `${DAY_ONE} 08:10`,
    ISOLDE,
    place('the safe', 'Safe', 'safe', '£60000'),
    tell('container_named', { container: 'tray A', name: 'Tray A', kind: 'tray', inside: 'the safe' }),
    tell('container_named', { container: 'tray B', name: 'Tray B', kind: 'tray', inside: 'the safe' }),
    place('bench 1', 'Bench 1', 'bench', '£8000'),
    place('bench 2', 'Bench 2', 'bench', '£8000'),
    place('the counter', 'Counter', 'counter', '£3000'),
    place('the window', 'Window', 'window', '£5000'),
  ),
  at(
    `${DAY_ONE} 08:20`,
    ISOLDE,
    tell('balance_put_in_service', {
      ...{ balance: 'bench balance', name: 'Bench balance', number: 'MB-0417', class: 'II', unit: 'g' },
      ...{ ranges: [{ max: '400', step: '0.01' }], verificationStep: '0.1', repeatability: '0.005', verifiedUntil: 'in 200 days' },
    }),
    tell('balance_put_in_service', {
      ...{ balance: 'carat balance', name: 'Carat balance', number: 'CB-1180', class: 'I', unit: 'ct' },
      ...{ ranges: [{ max: '200', step: '0.001' }], repeatability: '0.001', verifiedUntil: 'in 200 days' },
    }),
    tell('balance_put_in_service', {
      ...{ balance: 'fine balance', name: 'Fine balance', number: 'FB-0033', class: 'II', unit: 'g' },
      ...{ ranges: [{ max: '60', step: '0.001' }], verificationStep: '0.01', repeatability: '0.001' },
    }),
    tell('balance_calibrated', {
      balance: 'bench balance',
      by: 'maker',
      who: 'Larkfield Scale Works',
      certificate: 'LS-88-214',
      adjusted: 'adjusted',
    }),
  ),
  checked(`${DAY_ONE} 08:30`, 'bench balance', '50 g', '50.0002', '50.00 g'),
  at(
    `${DAY_ONE} 08:40`,
    ISOLDE,
    tell('tare_listed', { thing: 'bag tag', weight: '0.420 g on the fine balance', from: 'ten weighed together' }),
    tell('tare_listed', { thing: 'paper', weight: '0.310 g on the fine balance', from: 'ten weighed together' }),
    tell('tare_listed', { thing: 'binding wire', weight: '0.150 g on the fine balance', from: 'this one weighed' }),
  ),
  at(
    `${DAY_ONE} 08:50`,
    ISOLDE,
    stock('18ct yellow wire', 'gold-750', '42.60 g', '3107'),
    stock('18ct yellow sheet', 'gold-750', '31.85 g', '3112'),
    stock('18ct yellow solder', 'gold-750', '6.40 g', '2988'),
    stock('9ct yellow wire', 'gold-375', '26.30 g', '3054'),
    stock('9ct yellow solder', 'gold-375', '4.15 g', '2990'),
    stock('silver wire', 'silver-925', '61.20 g', '2871'),
    lot('18ct yellow lot', 'gold-750'),
    lot('9ct lot', 'gold-375'),
    lot('silver lot', 'silver-925'),
  ),
  ...[44, 38, 32, 26, 20, 14, 8, 2].map((days, week) =>
    checked(`${days} days ago 08:30`, 'bench balance', '50 g', '50.0002', week === 5 ? '50.01 g' : '50.00 g'),
  ),
  at(
    '26 days ago 08:55',
    ISOLDE,
    tell('metal_received', {
      stock: '18ct yellow wire',
      metal: 'gold-750',
      weight: '20.10 g',
      supplier: 'Harrow Vale Bullion',
      batch: '3140',
    }),
  ),
);
