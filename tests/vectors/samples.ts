// One line of each entry type, in the form its leaf holds: made-up things with fixed names, for vectors and tests.
import type { Data } from '../../src/book/entry.ts';
import type { EntryName, FieldsOf } from '../../src/entries/index.ts';
import type { CivilDate } from '../../src/units/dates.ts';
import { bagCode, type Ref, type RefKind, refFromBytes } from '../../src/units/ids.ts';
import { type MassUnit, massNg, parseMass } from '../../src/units/mass.ts';
import type { Reading } from '../../src/weighing/reading.ts';

const named = <K extends Exclude<RefKind, 'bag' | 'entry'>>(kind: K, n: number): Ref<K> => refFromBytes(kind, new Uint8Array(16).fill(n));

/** The things the samples speak of. */
export const THINGS = {
  shop: named('shop', 1),
  owner: named('person', 2),
  setter: named('person', 3),
  customer: named('customer', 4),
  safe: named('place', 5),
  tray: named('place', 6),
  balance: named('balance', 7),
  bag: bagCode(new Uint8Array([7, 20, 3])),
  job: named('job', 8),
  ring: named('piece', 9),
  sapphire: named('stone', 10),
  diamond: named('stone', 11),
  melee: named('packet', 12),
  oldParts: named('packet', 13),
  lot: named('lot', 14),
  stock: named('stock', 15),
  skin: named('skin', 16),
  entry: 'q5Y0TjXo0wB1cVb3rW0e0n2Jm9Xl4Kz8PpQ7RsT6UvA' as Ref<'entry'>,
} as const;
type ThingName = keyof typeof THINGS;

/** What kind each of them is. */
export const KINDS = {
  shop: 'shop',
  owner: 'person',
  setter: 'person',
  customer: 'customer',
  safe: 'place',
  tray: 'place',
  balance: 'balance',
  bag: 'bag',
  job: 'job',
  ring: 'piece',
  sapphire: 'stone',
  diamond: 'stone',
  melee: 'packet',
  oldParts: 'packet',
  lot: 'lot',
  stock: 'stock',
  skin: 'skin',
  entry: 'entry',
} as const satisfies Readonly<Record<ThingName, RefKind>>;

const NAMES: ReadonlyMap<string, string> = new Map(Object.entries(THINGS).map(([name, id]) => [id, `the ${name}`]));

/** The words for a thing of the samples. */
export const nameOf = (of: Ref): string => NAMES.get(of) ?? 'something else';

/** A weighing on the balance of the samples, which reads in steps of 0.01 g. */
export function weighed(text: string, unit: MassUnit = 'g'): Reading {
  const parsed = parseMass(text, unit);
  if ('problem' in parsed) throw new Error(`${text} ${unit} is no mass: ${parsed.problem}`);
  return { text, unit, ng: parsed.ng, basis: 'weighed', balance: THINGS.balance, stepNg: massNg(10_000_000) };
}

/** A day of the samples. */
export const day = (text: string): CivilDate => text as CivilDate;
const pounds = (minor: number) => ({ minor, currency: 'GBP' }) as const;
const PHOTO = 'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad';
const { shop, owner, setter, customer, safe, tray, balance, bag, job, ring, sapphire, diamond, oldParts, lot, stock, skin, entry } = THINGS;

export const SAMPLES: { readonly [N in EntryName]: Data<FieldsOf<N>> } = {
  ledger_started: { shop, owner, shopName: 'Bench at Number Nine', ownerName: 'Ada Stone' },
  policy_set: { shop, zone: 'Europe/London', country: 'GB', currency: 'GBP', staffing: 'alone', words: 'uk' },
  shop_described: { shop, address: '9 Wren Row\nBirmingham', phone: '0121 496 0018', email: 'bench@example.org' },
  terms_set: { shop, text: 'We take care.\nTell us if something is not right.', digest: PHOTO },
  baseline_accepted: { shop, bench: safe, operation: 'polish', metal: 'gold', jobs: 24, size: 412 },
  person_joined: { person: setter, role: 'bench', name: 'Ben Hill' },
  person_left: { person: setter },
  place_named: { place: safe, name: 'Big safe', kind: 'safe', limit: pounds(5_000_000) },
  container_named: { container: tray, name: 'Tray 3', kind: 'tray', inside: safe },
  device_enrolled: { shop, device: 'dev-1', name: 'Counter', kind: 'counter' },
  device_withdrawn: { shop, device: 'dev-1', name: 'Counter' },
  balance_put_in_service: {
    balance,
    name: 'Bench balance',
    number: 'B-1204',
    class: 'II',
    unit: 'g',
    ranges: [
      { max: '60', step: '0.001' },
      { max: '320', step: '0.01' },
    ],
    verificationStep: '0.01',
    repeatability: '0.0008',
    verifiedUntil: day('2027-06-30'),
  },
  balance_checked: { balance, nominal: '50 g', certifiedG: '50.00012', certificate: 'C-77', shown: weighed('50.00'), position: 'front left' },
  balance_calibrated: {
    balance,
    by: 'laboratory',
    who: 'Northern Mass Laboratory',
    certificate: 'L-2026-118',
    adjusted: 'adjusted',
    linearity: '0.002',
    eccentricity: '0.001',
    readings: ['20.00', '20.01', '20.00', '20.00', '20.01'],
  },
  tare_listed: { shop, thing: 'string tag', weight: weighed('0.21'), from: 'ten weighed together' },
  customer_met: { customer, name: 'C. Byrne', phone: '020 7946 0018', email: 'c@example.org', contact: ['surprise', 'mobile'] },
  job_opened: {
    job,
    bag,
    customer,
    broughtBy: 'customer',
    owner: 'customer',
    channel: 'counter',
    theirDocket: 'D-19',
    theirWeight: '5.2 g',
    comebackOf: '7M2K',
  },
  piece_received: {
    job,
    piece: ring,
    kind: 'ring',
    description: 'three-stone ring',
    parts: [
      { part: 'shank', metal: 'gold-750' },
      { part: 'heads', metal: 'platinum-950' },
    ],
    stones: 3,
    weight: weighed('5.17'),
    ringSizeMm: '54.5',
    condition: 'claw at 2 o’clock worn\nshank thin at the base',
  },
  weight_not_taken: { piece: ring, reason: 'strung', more: 'the thread is wet' },
  mark_read: { piece: ring, kind: 'fineness', where: 'inside the shank', struck: '750', legible: 'worn' },
  value_stated: { piece: ring, value: pounds(450_000), statedBy: 'customer' },
  setting_noted: {
    piece: ring,
    stone: sapphire,
    seat: 'centre',
    species: 'sapphire',
    cut: 'oval',
    sizeMm: '6.2',
    backing: 'open',
    state: 'sound',
  },
  photo_added: { about: ring, photo: PHOTO, shows: 'pan' },
  work_agreed: {
    job,
    steps: ['half-shank', 're-tip'],
    details: 'half-shank in 18ct, three claws',
    priceKind: 'fixed',
    price: pounds(18_500),
    promise: day('2026-12-18'),
    dust: 'shop',
    cutMetal: 'customer',
    oldParts: 'customer',
    heatConsent: true,
    markConsent: true,
    terms: '2026-1',
    agreedBy: 'signature',
  },
  ticket_issued: { job, kind: 'slip', checkpoint: '104' },
  ticket_lost: { job, knownBy: 'phone' },
  inspected_before_work: { piece: ring, findings: 'old solder under the centre head', photo: PHOTO },
  customer_told: { job, what: 'Old solder under the head; it may open in heat.', how: 'phone', answer: 'agreed' },
  promise_moved: { job, promise: day('2026-12-22'), why: 'metal is late', told: 'message' },
  taken: { of: job, from: safe },
  released: {
    of: ring,
    outworker: 'Hill Setting',
    purpose: 'setting',
    count: 1,
    carrier: 'a courier',
    consignment: 'N-5',
    declared: pounds(450_000),
    seal: 'S 10442',
    dueBack: day('2026-12-15'),
  },
  accepted: { of: ring, taker: setter, evidence: 'pin', seal: 'S 10442', sealState: 'intact', count: 1 },
  moved: { of: job, to: tray },
  piece_cleaned: { piece: ring, how: ['soap', 'steam'], dry: 'dry', weight: weighed('5.15') },
  piece_weighed: { piece: ring, state: 'stones out', weight: weighed('4.62') },
  stone_unset: { piece: ring, stone: sapphire, stones: 1, weight: weighed('1.31', 'ct'), condition: 'sound' },
  stone_weighed: { of: diamond, state: 'loose', weight: weighed('0.52', 'ct') },
  stone_supplied: {
    piece: ring,
    stone: diamond,
    species: 'diamond',
    origin: 'lab',
    treatment: 'none seen',
    whose: 'shop',
    told: day('2026-12-08'),
    weight: weighed('0.52', 'ct'),
  },
  lot_opened: { lot, name: '18ct scrap, December', metal: 'gold-750' },
  metal_received: {
    stock,
    name: '18ct D-section',
    metal: 'gold-750',
    weight: weighed('25.00'),
    supplier: 'a bullion dealer',
    batch: 'B 771',
    certificate: 'conformity 771',
    holdUntil: day('2026-12-20'),
  },
  stock_counted: { stock, weight: weighed('22.40') },
  metal_cut: { piece: ring, metal: 'gold-750', weight: weighed('1.34'), lot, part: 'lower shank', marks: '750 and a sponsor’s mark' },
  metal_added: { piece: ring, stock, metal: 'gold-750', weight: weighed('1.80'), what: 'shank' },
  filings_gathered: { piece: ring, metal: 'gold-750', weight: weighed('0.05'), lot },
  lemel_gathered: { skin, bench: 'Bench 1', metal: 'gold-750', weight: weighed('3.40') },
  skin_emptied: { skin, lot, metal: 'gold-750', weight: weighed('3.38') },
  piece_sized: { piece: ring, method: 'insert', from: 'L', to: 'N½' },
  stone_set: { piece: ring, stone: sapphire, stones: 1, seat: 'centre' },
  piece_checked: { piece: ring, stones: 3, seats: 'tight', ringSizeMm: '57.0', marks: 'readable', note: 'looks well' },
  work_finished: { job },
  identity_checked: { piece: ring, stone: sapphire, how: ['loupe', 'girdle'], agrees: 'agrees' },
  piece_returned: {
    piece: ring,
    stones: 3,
    to: 'customer',
    taker: 'C. Byrne',
    shown: 'collection slip',
    weight: weighed('5.58'),
    signed: 'signature',
  },
  returned_with_exception: {
    piece: ring,
    stones: 2,
    exception: '3 stones noted, 2 counted out',
    to: 'named',
    taker: 'D. Byrne',
    shown: 'collection slip and a message',
    weight: weighed('5.55'),
    signed: true,
  },
  old_parts_returned: { packet: oldParts, to: 'customer', signed: 'signature' },
  job_closed: { job },
  withdrawn: { job, reason: 'entered twice' },
  note_added: { about: job, text: 'Rings before nine.' },
  difference_explained: { of: lot, what: '0.12 g less than reckoned', person: owner, reason: 'the lid was swept with it' },
  corrected: { target: entry, seq: 41, field: 'weight', was: weighed('5.71'), is: weighed('5.17'), reason: 'two figures swapped' },
};
