// A shop in a temporary folder for tests: real files, a fixed clock that only tests move, seeded randomness.
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { openStore } from '../src/store/open.js';
import { instant } from '../src/units/dates.js';
import { bagCode, refFromBytes } from '../src/units/ids.js';
import { massNg, parseMass } from '../src/units/mass.js';
export const SQL_DIR = join(import.meta.dirname, '..', 'drizzle');
/** mulberry32: 32 bits of state, enough for tests that must be repeatable. */
export function seededBytes(seed) {
  let state = seed >>> 0;
  const next = () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return (t ^ (t >>> 14)) & 0xff;
  };
  return (bytes) => Uint8Array.from({ length: bytes }, next);
}
export const line = (type, data, occurredAt) => (occurredAt === undefined ? { type, data } : { type, data, occurredAt });
let commands = 0;
/** Opens a started shop: an owner, GB policy, a balance of 0.01 g to 400 g and one of 0.001 ct to 200 ct; or one not yet begun. */
export async function openShop(deps = {}) {
  const dir = deps.dir ?? mkdtempSync(join(tmpdir(), 'lemel-'));
  const clock = { now: instant(Date.UTC(2026, 11, 1, 9)) };
  const random = deps.random ?? seededBytes(deps.seed ?? 1);
  const store = await openStore({ dir, sqlDir: SQL_DIR, clock: () => clock.now, random, ...deps });
  const newRef = (kind) => refFromBytes(kind, random(16));
  const [shop, owner, balance, caratBalance] = [newRef('shop'), newRef('person'), newRef('balance'), newRef('balance')];
  const tell = async (lines, more = {}) => {
    const rows = await store.read('SELECT stream, COUNT(*) AS n FROM entry_link GROUP BY stream');
    const seen = Object.fromEntries(rows.map(({ stream, n }) => [String(stream), Number(n)]));
    const id = more.id ?? `test-${commands++}`;
    return store.record({ id, by: more.by ?? owner, auth: more.auth ?? 'password', device: 'test', seen, lines });
  };
  const write = async (...lines) => {
    const answer = await tell(lines);
    if (answer.answer !== 'written') throw new Error(JSON.stringify(answer));
    return answer.from;
  };
  const reading = (unit, on, stepNg, text, more = {}) => {
    const parsed = parseMass(text, unit);
    if ('problem' in parsed) throw new Error(`${text}: ${parsed.problem}`);
    return { text, unit, ng: parsed.ng, basis: 'weighed', balance: on, stepNg: massNg(stepNg), ...more };
  };
  const [{ n } = { n: 0 }] = await store.read('SELECT COUNT(*) AS n FROM entry');
  if (Number(n) === 0 && deps.started !== false) {
    await write(
      line('ledger_started', { shop, owner, shopName: 'Wren & Daughter', ownerName: 'Ada Wren' }),
      line('policy_set', { shop, zone: 'Europe/London', country: 'GB', currency: 'GBP', staffing: 'alone', words: 'uk' }),
      line('balance_put_in_service', balanceData(balance, 'Bench balance', 'g', '400', '0.01')),
      line('balance_put_in_service', balanceData(caratBalance, 'Carat balance', 'ct', '200', '0.001')),
    );
  }
  const close = async () => {
    await store.close();
    if (deps.dir === undefined) rmSync(dir, { recursive: true });
  };
  return {
    ...{ store, dir, owner, shop, balance, caratBalance, clock, random, newRef, tell, write, close },
    newBag: () => bagCode(random(3)),
    grams: (text, more) => reading('g', balance, 10_000_000, text, more),
    carats: (text, more) => reading('ct', caratBalance, 200_000, text, more),
  };
}
const balanceData = (balance, name, unit, largest, step) => ({
  balance,
  name,
  unit,
  class: 'II',
  ranges: [{ max: largest, step }],
});
