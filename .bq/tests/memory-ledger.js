import { decideCommand } from '../src/ledger/decide.js';
import { overlayOn } from '../src/ledger/overlay.js';
import { sha256 } from '../src/store/crypto.js';
import { civilDateOf, instant } from '../src/units/dates.js';
import { bagCode, refFromBytes } from '../src/units/ids.js';
import { massNg, parseMass } from '../src/units/mass.js';
import { line, seededBytes } from './shop.js';
/** Names from a seed. */
export function namesFrom(seed) {
  const random = seededBytes(seed);
  const bags = new Set();
  let texts = 0;
  const ref = (kind) => refFromBytes(kind, random(16));
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
export const beginning = ({ shop, owner, balance, caratBalance }) => [
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
export function weighing(names, unit, steps) {
  const [text, balance, stepNg] =
    unit === 'g' ? [(steps / 100).toFixed(2), names.balance, 10_000_000] : [(steps / 1000).toFixed(3), names.caratBalance, 200_000];
  return { text, unit, ng: ngOf(text, unit), basis: 'weighed', balance, stepNg: massNg(stepNg), repeats: [text], because: 'as drawn' };
}
function ngOf(text, unit) {
  const parsed = parseMass(text, unit);
  if ('problem' in parsed) throw new Error(`${text} ${unit}: ${parsed.problem}`);
  return parsed.ng;
}
/** A shop in memory that has only just begun. */
export async function memoryLedger(seed = 1) {
  const names = namesFrom(seed);
  const random = seededBytes(seed + 1);
  const none = async () => undefined;
  const overlay = overlayOn({ thing: none, head: none, entry: none, leaves: async () => [], openPieces: async () => [] });
  let commands = 0;
  const ledger = {
    overlay,
    names,
    look: () => ({ things: [...overlay.things.values()], leaves: overlay.written }),
    command: (lines, seen = Object.fromEntries([...overlay.heads].map(([stream, { size }]) => [stream, size])), auth = 'password') => ({
      ...{ id: `h-${seed}-${commands++}`, by: names.owner, auth, device: 'test', seen, lines },
    }),
    tell(command) {
      const at = instant(Date.UTC(2026, 11, 1, 9) + commands * 60_000);
      const shop = overlay.things.has(names.shop) ? names.shop : undefined;
      const today = civilDateOf(at, 'Europe/London');
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
