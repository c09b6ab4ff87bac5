// A refusal leaves no trace: neither in the things, nor in the streams, nor of the lines of its command that would have been taken.
import fc from 'fast-check';
import { expect, it } from 'vitest';
import type { Line } from '../../src/ledger/leaf.ts';
import { histories, linesOf } from '../histories.ts';
import { memoryLedger } from '../memory-ledger.ts';
import { line } from '../shop.ts';

const WRONGS: readonly ((lines: readonly Line[]) => readonly Line[])[] = [
  (lines) => [...lines, line('note_added', { about: '0'.repeat(26), text: 'about nothing' })],
  (lines) => [...lines, line('lot_opened', { name: 'without its lot', metal: 'gold-750' })],
  (lines) => [...lines, ...lines],
  (lines) => lines.map(({ type, data }) => ({ type, data: { ...data, unheard: 'of' } })),
  (lines) => lines.map((one) => ({ ...one, occurredAt: Number.MAX_SAFE_INTEGER as never })),
];

it('a command that is refused, asked about or in conflict changes nothing', { timeout: 60_000 }, async () => {
  const answers = new Set<string>();
  await fc.assert(
    fc.asyncProperty(histories(25), async (history) => {
      const ledger = await memoryLedger();
      const state = () => JSON.stringify([[...ledger.overlay.things], [...ledger.overlay.heads], ledger.overlay.written]);
      for (const step of history) {
        const lines = linesOf(step, ledger.look(), ledger.names);
        const before = state();
        const wrong = WRONGS[step.pick[2] % WRONGS.length] ?? ((same) => same);
        const stale = Object.fromEntries([...ledger.overlay.heads].map(([stream, { size }]) => [stream, size - 1]));
        const tries = [ledger.command(wrong(lines)), ledger.command(lines, stale), ledger.command(lines, undefined, 'session')];
        for (const command of lines.length === 0 ? [] : tries) {
          const decided = await ledger.tell(command);
          if (!('answer' in decided)) break;
          answers.add(decided.answer.answer);
          expect(state()).toBe(before);
        }
      }
    }),
    { numRuns: 25, seed: 4 },
  );
  expect([...answers].sort()).toEqual(['conflict', 'refused']);
});
