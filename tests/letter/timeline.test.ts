// What a customer is told: what each entry tells of itself, and a correction where its target is told, of whatever type.
import { describe, expect, it } from 'vitest';
import { wordsIn } from '../../src/book/us-words.ts';
import { timelineOf } from '../../src/letter/timeline.ts';
import { memoryLedger, weighing } from '../memory-ledger.ts';
import { line } from '../shop.ts';

const PHOTO = 'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad';

describe('the timeline', () => {
  it('tells a correction where its target is told, and hides it where that is hidden', async () => {
    const ledger = await memoryLedger();
    const { names } = ledger;
    const [job, piece] = [names.ref('job'), names.ref('piece')];
    const weight = weighing(names, 'g', 682);
    await ledger.tell(
      ledger.command([
        line('job_opened', { job, bag: names.bag(), broughtBy: 'customer', owner: 'customer', channel: 'counter' }),
        line('piece_received', {
          job,
          piece,
          kind: 'ring',
          description: 'ring',
          parts: [{ part: 'all', metal: 'gold-750' }],
          stones: 0,
          weight,
        }),
        line('photo_added', { about: piece, photo: PHOTO, shows: 'pan' }),
      ]),
    );
    const [, received, photo] = ledger.overlay.written.slice(-3);
    const correction = (target: typeof received, field: string, was: unknown, is: unknown) =>
      line('corrected', { target: target?.hash, seq: target?.seq, field, was, is, reason: 'misread' });
    await ledger.tell(ledger.command([correction(photo, 'shows', 'pan', 'whole'), correction(received, 'stones', 0, 1)]));
    const told = timelineOf(ledger.overlay.written, () => 'the ring');
    const plain = (text: string) => wordsIn('uk', text).replaceAll('\u00a0', ' ');
    expect(told.map(({ what, corrects }) => [plain(what), corrects])).toEqual([
      ['Received: ring, 1 stone, 6.82 g', null],
      [`Correction of entry ${received?.seq}: misread`, received?.seq],
    ]);
    expect(plain(told[0]?.first?.what ?? '')).toBe('Received: ring, 0 stones, 6.82 g');
    expect(told[1]?.first).toBeNull();
  });
});
