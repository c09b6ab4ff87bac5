// Sign-in: PINs and passwords (Argon2id with a pepper outside the file), bench sessions, the one-time link; with drafts and screens. Losing this file costs no data.
import { hash, verify } from '@node-rs/argon2';
import { base64url } from '../log/bytes.ts';
import type { Instant } from '../units/dates.ts';
import type { Ref } from '../units/ids.ts';
import { sha256 } from './crypto.ts';
import { type Devices, openDevices } from './devices.ts';
import { type Drafts, openDrafts } from './drafts.ts';
import type { SqliteFile } from './sqlite.ts';

export type Credential = 'pin' | 'password';
export interface Session {
  readonly person: Ref<'person'>;
  readonly device: string;
  readonly lockedAt: number | null;
}
/** What came of trying a PIN or a password: right, wrong, or not yet (the wait in ms). */
export type Tried = { readonly right: true } | { readonly right: false; readonly waitMs: number };
export interface Access extends Devices, Drafts {
  setCredential(person: Ref<'person'>, kind: Credential, secret: string): Promise<void>;
  hasCredential(person: Ref<'person'>): Promise<boolean>;
  /** Tries a PIN or password; after three wrong ones each next try waits twice as long, per person and device, so that nobody locks out a colleague. */
  tryCredential(person: Ref<'person'>, device: string, kind: Credential, secret: string): Promise<Tried>;
  /** Begins a session; answers its token, of which only the hash is kept. */
  beginSession(person: Ref<'person'>, device: string): Promise<string>;
  /** The session of a token, locked after ten idle minutes; null when there is none. Watching a page for news is no sign of anybody being there. */
  session(token: string, isWatching?: boolean): Promise<Session | null>;
  unlock(token: string): Promise<void>;
  endSession(token: string): Promise<void>;
  /** A link that makes the owner, once, within half an hour. */
  makeSetupLink(): Promise<string>;
  checkSetupLink(token: string): Promise<boolean>;
  useSetupLinks(): Promise<void>;
}

const IDLE_MS = 10 * 60_000;
const LIFE_MS = 12 * 3_600_000;
const LINK_MS = 30 * 60_000;
const FREE_TRIES = 3;
const LONGEST_WAIT_MS = 5 * 60_000;

export function openAccess(file: SqliteFile, pepper: Uint8Array, clock: () => Instant, random: (bytes: number) => Uint8Array): Access {
  const tokenHash = (token: string) => sha256(new TextEncoder().encode(token));
  const newToken = () => base64url(random(32));
  const run = (sql: string, args: Parameters<SqliteFile['read']>[1]) => file.write((tx) => tx.run(sql, args));

  const waitOf = async (person: string, device: string): Promise<number> => {
    const [row] = await file.read('SELECT next_at FROM attempt WHERE person = ? AND device = ?', [person, device]);
    return Math.max(0, Number(row?.next_at ?? 0) - clock());
  };
  const countFailure = (person: string, device: string) =>
    file.write(async (tx) => {
      const [row] = await tx.all('SELECT failures FROM attempt WHERE person = ? AND device = ?', [person, device]);
      const failures = Number(row?.failures ?? 0) + 1;
      const waitMs = failures < FREE_TRIES ? 0 : Math.min(LONGEST_WAIT_MS, 1000 * 2 ** (failures - FREE_TRIES));
      await tx.run('INSERT OR REPLACE INTO attempt (person, device, failures, next_at) VALUES (?, ?, ?, ?)', [
        person,
        device,
        failures,
        clock() + waitMs,
      ]);
      return waitMs;
    });

  return {
    ...openDevices(file, clock, random),
    ...openDrafts(file, pepper, clock, random),
    async setCredential(person, kind, secret) {
      const hashed = await hash(secret, { secret: pepper });
      await run('INSERT OR REPLACE INTO credential (person, kind, hash, set_at) VALUES (?, ?, ?, ?)', [person, kind, hashed, clock()]);
    },
    hasCredential: async (person) => (await file.read('SELECT 1 FROM credential WHERE person = ?', [person])).length > 0,
    async tryCredential(person, device, kind, secret) {
      const waiting = await waitOf(person, device);
      if (waiting > 0) return { right: false, waitMs: waiting };
      const [row] = await file.read('SELECT hash FROM credential WHERE person = ? AND kind = ?', [person, kind]);
      const right = row !== undefined && (await verify(String(row.hash), secret, { secret: pepper }));
      if (!right) return { right: false, waitMs: await countFailure(person, device) };
      await run('DELETE FROM attempt WHERE person = ? AND device = ?', [person, device]);
      return { right: true };
    },
    async beginSession(person, device) {
      const token = newToken();
      const args = [tokenHash(token), person, device, clock(), clock()];
      await run('INSERT INTO session (token_hash, person, device, begun_at, seen_at) VALUES (?, ?, ?, ?, ?)', args);
      return token;
    },
    async session(token, isWatching = false) {
      const [row] = await file.read('SELECT person, device, begun_at, seen_at, locked_at FROM session WHERE token_hash = ?', [
        tokenHash(token),
      ]);
      if (!row || clock() - Number(row.begun_at) > LIFE_MS) return null;
      const idle = clock() - Number(row.seen_at) > IDLE_MS;
      const lockedAt = row.locked_at === null ? (idle ? clock() : null) : Number(row.locked_at);
      if (idle && row.locked_at === null) await run('UPDATE session SET locked_at = ? WHERE token_hash = ?', [clock(), tokenHash(token)]);
      else if (!isWatching && clock() - Number(row.seen_at) > 30_000)
        await run('UPDATE session SET seen_at = ? WHERE token_hash = ?', [clock(), tokenHash(token)]);
      return { person: String(row.person) as Ref<'person'>, device: String(row.device), lockedAt };
    },
    unlock: (token) => run('UPDATE session SET locked_at = NULL, seen_at = ? WHERE token_hash = ?', [clock(), tokenHash(token)]),
    endSession: (token) => run('DELETE FROM session WHERE token_hash = ?', [tokenHash(token)]),
    async makeSetupLink() {
      const token = newToken();
      await run('INSERT INTO setup_link (token_hash, expires_at) VALUES (?, ?)', [tokenHash(token), clock() + LINK_MS]);
      return token;
    },
    async checkSetupLink(token) {
      const rows = await file.read('SELECT 1 FROM setup_link WHERE token_hash = ? AND expires_at > ?', [tokenHash(token), clock()]);
      return rows.length > 0;
    },
    useSetupLinks: () => run('DELETE FROM setup_link', []),
  };
}
