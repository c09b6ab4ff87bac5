// The ledger without its file: the pure part alone, in memory, for tests that tell it much.
import type { Stamp } from '../src/book/entry.ts';
import { type Decided, decideCommand } from '../src/ledger/decide.ts';
import type { Command, Kept, Line } from '../src/ledger/leaf.ts';
import { type Overlay, overlayOn } from '../src/ledger/overlay.ts';
import type { Thing } from '../src/ledger/thing.ts';
import { sha256 } from '../src/store/crypto.ts';
import { type CivilDate, civilDateOf, instant } from '../src/units/dates.ts';
import { bagCode, type Ref, type RefKind, refFromBytes } from '../src/units/ids.ts';
import { type MassUnit, massNg, parseMass } from '../src/units/mass.ts';
import type { Reading } from '../src/weighing/reading.ts';
import { line, seededBytes } from './shop.ts';

/** What a step may look at: the things and entries so far. */
export interface Look {
  readonly things: readonly Thing[];
  readonly leaves: readonly Kept[];
}
/** Makes names: the same ones for the same seed. */
export interface Names {
  readonly owner: Ref<'person'>;
  readonly shop: Ref<'shop'>;
  readonly balance: Ref<'balance'>;
  readonly caratBalance: Ref<'balance'>;
  ref<K extends Exclude<RefKind, 'bag' | 'entry'>>(kind: K): Ref<K>;
  bag(): Ref<'bag'>;
  /** A text that no other entry has. */
  text(): string;
}
/** Names from a seed. */
export function namesFrom(seed: number): Names {
  const random = seededBytes(seed);
  const bags = new Set<string>();
  let texts = 0;
  const ref = <K extends Exclude<RefKind, 'bag' | 'entry'>>(kind: K) => refFromBytes(kind, random(16));
  return {
    ...{ owner: ref('person'), shop: ref('shop'), balance: ref('balance'), caratBalance: ref('balance'), ref },
    text: () => `words ${seed} ${(texts++).toString().padStart(5, '0')}`,
    bag: () => {
      for (;;) {
        const code = bagCode(random(5), 5);
        if (bags.size < bags.add(code).size) return code;
      }
    },
  };
}

/** The commands by which a shop begins. */
export const beginning = ({ shop, owner, balance, caratBalance }: Names): readonly (readonly Line[])[] => [
  [line('ledger_started', { shop, owner, shopName: 'Wren & Daughter', ownerName: 'Ada Wren' })],
  [line('policy_set', { shop, zone: 'Europe/London', country: 'GB', currency: 'GBP', staffing: 'alone', words: 'uk' })],
  [line('balance_put_in_service', { balance, name: 'Bench', unit: 'g', class: 'II', ranges: [{ max: '4000', step: '0.01' }] })],
  [
    line('balance_put_in_service', {
      balance: caratBalance,
      name: 'Stones',
      unit: 'ct',
      class: 'II',
      ranges: [{ max: '20000', step: '0.001' }],
    }),
  ],
];

/** A weight on one of the two balances, with its second reading and reason, so that nothing need be asked. */
export function weighing(names: Names, unit: 'g' | 'ct', steps: number): Reading {
  const [text, balance, stepNg] =
    unit === 'g' ? [(steps / 100).toFixed(2), names.balance, 10_000_000] : [(steps / 1000).toFixed(3), names.caratBalance, 200_000];
  return { text, unit, ng: ngOf(text, unit), basis: 'weighed', balance, stepNg: massNg(stepNg), repeats: [text], because: 'as drawn' };
}
function ngOf(text: string, unit: MassUnit) {
  const parsed = parseMass(text, unit);
  if ('problem' in parsed) throw new Error(`${text} ${unit}: ${parsed.problem}`);
  return parsed.ng;
}

/** A ledger in memory: the pure part alone, without a file. */
export interface MemoryLedger {
  readonly overlay: Overlay;
  readonly names: Names;
  look(): Look;
  command(lines: readonly Line[], seen?: Readonly<Record<string, number>>, auth?: Stamp['auth']): Command;
  tell(command: Command): Promise<Decided>;
}

/** A shop in memory that has only just begun. */
export async function memoryLedger(seed = 1): Promise<MemoryLedger> {
  const names = namesFrom(seed);
  const random = seededBytes(seed + 1);
  const none = async () => undefined;
  const overlay = overlayOn({ thing: none, head: none, entry: none, leaves: async () => [], openPieces: async () => [] });
  let commands = 0;
  const ledger: MemoryLedger = {
    overlay,
    names,
    look: () => ({ things: [...overlay.things.values()], leaves: overlay.written }),
    command: (lines, seen = Object.fromEntries([...overlay.heads].map(([stream, { size }]) => [stream, size])), auth = 'password') => ({
      ...{ id: `h-${seed}-${commands++}`, by: names.owner, auth, device: 'test', seen, lines },
    }),
    tell(command) {
      const at = instant(Date.UTC(2026, 11, 1, 9) + commands * 60_000);
      const shop = overlay.things.has(names.shop) ? names.shop : undefined;
      const today: CivilDate = civilDateOf(at, 'Europe/London');
      const writer = { log: 'lemel/test/1', seq: overlay.written.length, shop, at, today, alone: true, sha256, random };
      return decideCommand(overlay, command, writer);
    },
  };
  for (const lines of beginning(names)) {
    const begun = await ledger.tell(ledger.command(lines));
    if ('answer' in begun) throw new Error(JSON.stringify(begun));
  }
  return ledger;
}
