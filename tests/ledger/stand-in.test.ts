// A correction passes what its entry would have passed, and what was written since still stands with it.
import { beforeEach, describe, expect, it } from 'vitest';
import type { Kept, Line } from '../../src/ledger/leaf.ts';
import type { Ref } from '../../src/units/ids.ts';
import { type MemoryLedger, memoryLedger, weighing } from '../memory-ledger.ts';
import { line } from '../shop.ts';

let ledger: MemoryLedger;
let job: Ref<'job'>;
let piece: Ref<'piece'>;
const told = async (...lines: readonly Line[]) => {
  const decided = await ledger.tell(ledger.command(lines));
  return 'answer' in decided ? decided.answer : { answer: 'written' };
};
const grams = (steps: number, sure = false) => {
  const { repeats, because, ...once } = weighing(ledger.names, 'g', steps);
  return sure ? { ...once, repeats, because } : once;
};
const last = (type: string): Kept => {
  const found = ledger.overlay.written.findLast(({ leaf }) => leaf.type === type);
  if (!found) throw new Error(`no ${type}`);
  return found;
};
const correct = (type: string, field: string, is: unknown) => {
  const { hash, seq, leaf } = last(type);
  const [was, now] = [field === 'occurredAt' ? leaf.occurredAt : leaf.data[field], is];
  return told(
    line('corrected', {
      target: hash,
      seq,
      field,
      ...(was === undefined ? {} : { was }),
      ...(now === undefined ? {} : { is: now }),
      reason: 'misread',
    }),
  );
};

beforeEach(async () => {
  ledger = await memoryLedger();
  [job, piece] = [ledger.names.ref('job'), ledger.names.ref('piece')];
  const promise = '2026-12-20';
  await told(
    line('job_opened', { job, bag: ledger.names.bag(), broughtBy: 'customer', owner: 'customer', channel: 'counter' }),
    line('piece_received', {
      ...{ job, piece, kind: 'ring', description: 'ring', stones: 3, weight: grams(517) },
      parts: [{ part: 'all', metal: 'gold-750' }],
    }),
    line('work_agreed', {
      ...{ job, steps: ['re-tip'], priceKind: 'free', promise, dust: 'shop', cutMetal: 'customer', oldParts: 'customer' },
      ...{ terms: '2026-1', agreedBy: 'signature' },
    }),
  );
});
const takeOneOut = () => told(line('stone_unset', { piece, packet: ledger.names.ref('packet'), stones: 1, condition: 'sound' }));

describe('a correction', () => {
  it('goes in where its entry would have', async () => {
    expect(await correct('piece_received', 'stones', 2)).toEqual({ answer: 'written' });
    expect(await correct('piece_received', 'weight', grams(520))).toEqual({ answer: 'written' });
    expect(ledger.overlay.things.get(piece)).toMatchObject({ stones: 2, posted: { ng: 5_200_000_000 } });
  });
  it('is refused over the largest load of the balance, like the entry', async () => {
    const heavy = { ...grams(517), text: '4000.01', ng: 4_000_010_000_000 };
    expect(await correct('piece_received', 'weight', heavy)).toMatchObject({
      answer: 'refused',
      code: 'over_largest_load',
      field: 'weight',
    });
    expect(await correct('piece_received', 'weight', { ...heavy, text: '4000.00', ng: 4_000_000_000_000 })).toEqual({ answer: 'written' });
  });
  it('is refused in another unit than the balance shows', async () => {
    const carats = { ...weighing(ledger.names, 'ct', 5170), balance: ledger.names.balance };
    expect(await correct('piece_received', 'weight', carats)).toMatchObject({ answer: 'refused', code: 'balance_unit' });
  });
  it('asks where the entry would have asked, and goes in with a second reading and a reason', async () => {
    await told(line('piece_weighed', { piece, state: 'cleaned and dry', weight: grams(516) }));
    expect(await correct('piece_weighed', 'weight', grams(341))).toMatchObject({ answer: 'asked', code: 'not_expected', field: 'weight' });
    expect(await correct('piece_weighed', 'weight', grams(341, true))).toEqual({ answer: 'written' });
  });
  it('is held against what was known before its entry, not against what came after', async () => {
    await told(line('metal_cut', { piece, metal: 'gold-750', weight: grams(200, true), packet: ledger.names.ref('packet') }));
    await told(line('piece_weighed', { piece, state: 'cut', weight: grams(317) }));
    expect(await correct('metal_cut', 'weight', grams(199))).toEqual({ answer: 'written' });
    expect(await correct('metal_cut', 'weight', { ...grams(518) })).not.toEqual({ answer: 'written' });
  });
  it('that would leave a later entry impossible is refused in words that name it', async () => {
    await takeOneOut();
    const answer = await correct('piece_received', 'stones', 0);
    expect(answer).toMatchObject({ answer: 'refused', code: 'would_not_stand', field: 'stones' });
    expect(answer).toMatchObject({ say: expect.stringContaining(`Entry ${last('stone_unset').seq} `) });
    expect(await correct('piece_received', 'stones', 1)).toEqual({ answer: 'written' });
    expect(ledger.overlay.things.get(piece)?.stones).toBe(0);
  });
  it('of a count at hand-back is refused where the count would have been', async () => {
    await told(line('work_finished', { job }));
    await told(line('piece_returned', { piece, stones: 3, to: 'customer', shown: 'slip', signed: 'signature' }));
    expect(await correct('piece_returned', 'stones', 2)).toMatchObject({ answer: 'refused', code: 'stone_count_differs', field: 'stones' });
    expect(await correct('piece_returned', 'shown', 'known to us')).toEqual({ answer: 'written' });
  });
  it('of what was received is refused where the count handed back would no longer agree', async () => {
    await told(line('work_finished', { job }));
    await told(line('piece_returned', { piece, stones: 3, to: 'customer', shown: 'slip', signed: 'signature' }));
    expect(await correct('piece_received', 'stones', 4)).toMatchObject({ answer: 'refused', code: 'would_not_stand' });
    expect(await correct('piece_received', 'description', 'a ring')).toEqual({ answer: 'written' });
  });
  it('of a stock is decided as before the stock was there', async () => {
    const stock = ledger.names.ref('stock');
    await told(line('metal_received', { stock, name: 'Wire', metal: 'gold-750', weight: grams(2500), batch: 'B 1' }));
    expect(await correct('metal_received', 'batch', 'B 2')).toEqual({ answer: 'written' });
    expect(await correct('metal_received', 'weight', { ...grams(2500), text: '4000.01', ng: 4_000_010_000_000 })).toMatchObject({
      code: 'over_largest_load',
    });
  });
  it('leaves nothing behind when it is refused', async () => {
    await takeOneOut();
    const before = [ledger.overlay.written.length, ledger.overlay.things.get(piece)];
    await correct('piece_received', 'stones', 0);
    expect([ledger.overlay.written.length, ledger.overlay.things.get(piece)]).toEqual(before);
  });
});
