// What the ledger itself asks of every entry, before the entry's own rules.
import { beforeEach, describe, expect, it } from 'vitest';
import type { Line } from '../../src/ledger/leaf.ts';
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
