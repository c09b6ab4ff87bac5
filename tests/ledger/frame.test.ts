// What the ledger itself asks of every entry, before the entry's own rules.
import { beforeEach, describe, expect, it } from 'vitest';
import type { Leaf, Line } from '../../src/ledger/leaf.ts';
import { entryType, openData, type Values } from '../../src/ledger/registry.ts';
import { instant } from '../../src/units/dates.ts';
import { type MassUnit, massNg, parseMass } from '../../src/units/mass.ts';
import { type MemoryLedger, memoryLedger } from '../memory-ledger.ts';
import { line } from '../shop.ts';

let ledger: MemoryLedger;
beforeEach(async () => {
  ledger = await memoryLedger();
});
const told = async (lines: readonly Line[], over: object = {}) => {
  const decided = await ledger.tell({ ...ledger.command(lines), ...over });
  return 'answer' in decided ? decided.answer : { answer: 'written' };
};
const lot = (id: string) => line('lot_opened', { lot: id, name: 'Scrap', metal: 'gold-750' });

describe('the ledger', () => {
  it('begins with its shop, and only once', async () => {
    const { names } = ledger;
    const started = line('ledger_started', { shop: names.ref('shop'), owner: names.ref('person'), shopName: 'Second', ownerName: 'B' });
    expect(await told([started])).toMatchObject({ answer: 'refused', code: 'out_of_place' });
  });

  it('is written by staff alone', async () => {
    const nobody = ledger.names.ref('person');
    expect(await told([lot(ledger.names.ref('lot'))], { by: nobody })).toMatchObject({ answer: 'refused', code: 'not_staff' });
    expect(await told([lot(ledger.names.ref('lot'))], { by: ledger.names.shop })).toMatchObject({ answer: 'refused', code: 'not_staff' });
  });

  it('lets nothing begin twice, neither later nor within one entry', async () => {
    const id = ledger.names.ref('lot');
    expect(await told([lot(id)])).toEqual({ answer: 'written' });
    expect(await told([lot(id)])).toMatchObject({ code: 'already_begun', field: 'lot' });
    const job = ledger.names.ref('job');
    await told([
      line('job_opened', { job, bag: ledger.names.bag(), broughtBy: 'customer', owner: 'customer', channel: 'counter' }),
      line('piece_received', {
        job,
        piece: ledger.names.ref('piece'),
        kind: 'ring',
        description: 'Ring',
        parts: [{ part: 'a', metal: 'gold-750' }],
        stones: 2,
      }),
    ]);
    const piece = ledger.look().things.find(({ kind }) => kind === 'piece')?.id;
    const both = ledger.names.ref('stone');
    const noted = { piece, stone: both, packet: both, seat: 'centre', species: 'diamond', backing: 'open', state: 'sound' };
    expect(await told([line('setting_noted', noted)])).toMatchObject({ code: 'already_begun', field: 'packet' });
  });

  it('does not take a thing of one kind for one of another', async () => {
    const id = ledger.names.ref('lot');
    await told([lot(id)]);
    expect(await told([line('work_finished', { job: id })])).toMatchObject({ code: 'not_found', field: 'job' });
  });

  const opened = (job: string) =>
    line('job_opened', { job, bag: ledger.names.bag(), broughtBy: 'customer', owner: 'customer', channel: 'counter' });
  const received = (job: string, piece: string, more: object = {}) =>
    line('piece_received', {
      job,
      piece,
      kind: 'ring',
      description: 'Ring',
      parts: [{ part: 'a', metal: 'gold-750' }],
      stones: 2,
      ...more,
    });

  it('takes no field that an entry does not have, none that is missing, and none of another kind', async () => {
    const id = ledger.names.ref('lot');
    const wrong = (data: object) => told([line('lot_opened', { lot: id, name: 'Scrap', metal: 'gold-750', ...data })]);
    expect(await wrong({ colour: 'red' })).toMatchObject({ answer: 'refused', code: 'invalid', field: 'colour' });
    expect(await wrong({ name: undefined })).toMatchObject({ answer: 'refused', code: 'invalid', field: 'name' });
    expect(await wrong({ metal: 'mud' })).toMatchObject({ answer: 'refused', code: 'invalid', field: 'metal' });
    expect(await wrong({})).toEqual({ answer: 'written' });
  });

  it('writes one entry for one job', async () => {
    const { names } = ledger;
    const [one, two, ring, brooch, packet] = [
      names.ref('job'),
      names.ref('job'),
      names.ref('piece'),
      names.ref('piece'),
      names.ref('packet'),
    ];
    await told([opened(one), received(one, ring), opened(two), received(two, brooch)]);
    const agreed = {
      steps: ['re-tip'],
      priceKind: 'free',
      promise: '2026-12-20',
      dust: 'shop',
      cutMetal: 'customer',
      oldParts: 'customer',
    };
    await told([one, two].map((job) => line('work_agreed', { job, ...agreed, terms: '1', agreedBy: 'phone' })));
    const unset = (piece: string) => told([line('stone_unset', { piece, packet, stones: 1, condition: 'sound' })]);
    expect(await unset(ring)).toEqual({ answer: 'written' });
    expect(await unset(brooch)).toMatchObject({ answer: 'refused', code: 'two_jobs', field: 'packet' });
  });

  it('takes no reading in another unit than its balance shows, and none over its largest load', async () => {
    const job = ledger.names.ref('job');
    const weighed = (weight: object) => told([opened(job), received(job, ledger.names.ref('piece'), { weight })]);
    const { balance, caratBalance } = ledger.names;
    const reading = (text: string, unit: MassUnit, on: string) => {
      const parsed = parseMass(text, unit);
      return { text, unit, ng: 'ng' in parsed ? parsed.ng : 0, basis: 'weighed', balance: on, stepNg: unit === 'g' ? 10_000_000 : 200_000 };
    };
    expect(await weighed(reading('5.17', 'ct', balance))).toMatchObject({ answer: 'refused', code: 'balance_unit', field: 'weight' });
    expect(await weighed(reading('5.17', 'g', caratBalance))).toMatchObject({ answer: 'refused', code: 'balance_unit' });
    expect(await weighed(reading('4000.01', 'g', balance))).toMatchObject({
      answer: 'refused',
      code: 'over_largest_load',
      field: 'weight',
    });
    expect(await weighed(reading('4000.00', 'g', balance))).toEqual({ answer: 'written' });
  });

  it('wants a PIN or the password where the entry does, and takes what is surer', async () => {
    const at = (auth: string, ...lines: Line[]) => told(lines, { auth });
    const [job, piece] = [ledger.names.ref('job'), ledger.names.ref('piece')];
    await told([opened(job), received(job, piece)]);
    const released = line('released', { of: piece, purpose: 'setting' });
    expect(await at('session', released)).toMatchObject({ answer: 'refused', code: 'pin_needed', field: 'pin' });
    expect(await at('pin', released)).toEqual({ answer: 'written' });
    const joins = line('person_joined', { person: ledger.names.ref('person'), role: 'bench', name: 'Ben Hill' });
    for (const auth of ['session', 'pin']) {
      expect(await at(auth, joins)).toMatchObject({ answer: 'refused', code: 'password_needed', field: 'password' });
    }
    expect(await at('password', joins)).toEqual({ answer: 'written' });
  });

  it('wants a PIN to correct what somebody else wrote, or what went home, and none for one’s own', async () => {
    const colleague = ledger.names.ref('person');
    await told([line('person_joined', { person: colleague, role: 'bench', name: 'Ben Hill' })]);
    const [job, piece] = [ledger.names.ref('job'), ledger.names.ref('piece')];
    await told([opened(job), received(job, piece)], { by: colleague });
    const kept = ledger.overlay.written.at(-1);
    const said = (was: string, is: string) =>
      line('corrected', { target: kept?.hash, seq: kept?.seq, field: 'description', was, is, reason: 'misheard' });
    expect(await told([said('Ring', 'A ring')], { auth: 'session', by: colleague })).toEqual({ answer: 'written' });
    expect(await told([said('A ring', 'Her ring')], { auth: 'session' })).toMatchObject({ code: 'pin_needed' });
    expect(await told([said('A ring', 'Her ring')], { auth: 'pin' })).toEqual({ answer: 'written' });
    const home = { piece, stones: 2, exception: 'not begun', to: 'customer', shown: 'slip', signed: true };
    await told([line('returned_with_exception', home), line('job_closed', { job })]);
    expect(await told([said('Her ring', 'Ring')], { auth: 'session', by: colleague })).toMatchObject({ code: 'pin_needed' });
    expect(await told([said('Her ring', 'Ring')], { auth: 'pin', by: colleague })).toEqual({ answer: 'written' });
  });

  it('takes no time that has not come, but for a minute that clocks differ by', async () => {
    const at = (seconds: number) => {
      const command = ledger.command([]);
      const now = Date.UTC(2026, 11, 1, 9) + (Number(command.id.split('-').at(-1)) + 2) * 60_000;
      return told([{ ...lot(ledger.names.ref('lot')), occurredAt: instant(now + seconds * 1000) }]);
    };
    expect(await at(60)).toEqual({ answer: 'written' });
    expect(await at(61)).toMatchObject({ answer: 'refused', code: 'in_the_future', field: 'occurredAt' });
  });

  // 1 dwt = 1.55517384 g and 1 ozt = 31.1034768 g (NIST Handbook 44, Appendix C): their hundredths and thousandths are no whole ng.
  it.each<[MassUnit, string, string, string]>([
    ['dwt', '0.01', '1.23', '1.235'],
    ['ozt', '0.001', '0.123', '0.1235'],
    ['g', '0.05', '4.35', '4.37'],
    ['ct', '0.002', '0.412', '0.413'],
  ])('knows which figures a balance in %s with steps of %s can show', async (unit, step, shown, notShown) => {
    const balance = ledger.names.ref('balance');
    await told([line('balance_put_in_service', { balance, name: 'Old', unit, class: 'none', ranges: [{ max: '100', step }] })]);
    const ngOf = (text: string) => {
      const parsed = parseMass(text, unit);
      return massNg('ng' in parsed ? parsed.ng : 0);
    };
    const weighed = (text: string) => {
      const weight = { text, unit, ng: ngOf(text), basis: 'weighed', balance, stepNg: ngOf(step) };
      return told([line('metal_received', { stock: ledger.names.ref('stock'), name: text, metal: 'gold-750', weight })]);
    };
    expect(await weighed(shown)).toEqual({ answer: 'written' });
    expect(await weighed(notShown)).toMatchObject({ answer: 'asked', code: 'not_a_step', field: 'weight' });
  });
});

describe('an entry of an earlier version', () => {
  const first = { type: 'stone_recut', version: 1, data: { from: '1.20' } } as const;
  /** The same type two versions later: `from` became `before`, then its unit was written with it. */
  const recut = {
    ...entryType('lot_opened'),
    ...{ type: 'stone_recut', version: 3 },
    upcast: (data: Values, version: number): Values => (version === 1 ? { before: data.from } : { ...data, unit: 'ct' }),
  };
  const leaf = (ver: number, data: Leaf['data']) => ({ type: first.type, ver, data });

  it('is brought forward one version at a time, and one of today is left as it is', () => {
    const registry = { stone_recut: recut };
    expect(openData(leaf(1, first.data), registry)).toEqual({ before: '1.20', unit: 'ct' });
    expect(openData(leaf(2, { before: '1.20' }), registry)).toEqual({ before: '1.20', unit: 'ct' });
    expect(openData(leaf(3, { before: '1.20', unit: 'g' }), registry)).toEqual({ before: '1.20', unit: 'g' });
  });
  it('without a way forward, of a later version or of no known type stops the replay', () => {
    const { upcast: _, ...stuck } = recut;
    expect(() => openData(leaf(1, first.data), { stone_recut: stuck })).toThrow(/no way from version 1/);
    expect(() => openData(leaf(4, first.data), { stone_recut: recut })).toThrow(/newer than this program/);
    expect(() => openData(leaf(1, first.data))).toThrow(/unknown entry type/);
    expect(() => openData({ ...leaf(1, first.data), type: 'toString' })).toThrow(/unknown entry type/);
  });
});
