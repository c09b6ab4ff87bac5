// Sign-in: PINs and passwords (Argon2id with a pepper outside the file), the one-time link, and with it sessions, drafts and screens.
// Losing this file costs no data.
import { hash, verify } from '@node-rs/argon2';
import { base64url } from '../log/bytes.ts';
import type { Instant } from '../units/dates.ts';
import type { Ref } from '../units/ids.ts';
import { type Devices, openDevices } from './devices.ts';
import { type Drafts, openDrafts } from './drafts.ts';
import { hashOfToken, openSessions, type Sessions, SLACK_MS } from './sessions.ts';
import type { SqliteFile } from './sqlite.ts';
import { type Credential, openTries, type Tried, type Tries } from './tries.ts';

export type { Session } from './sessions.ts';
export interface Access extends Devices, Drafts, Sessions, Omit<Tries, 'attempt'> {
  /** A new PIN or password ends every session of the person at once, and every wait. */
  setCredential(person: Ref<'person'>, kind: Credential, secret: string): Promise<void>;
  hasCredential(person: Ref<'person'>, kind?: Credential): Promise<boolean>;
  /** Tries a PIN or password, with the token of the session or screen it is typed at; a right PIN makes a screen the person's own. */
  tryCredential(person: Ref<'person'>, token: string | null, kind: Credential, secret: string): Promise<Tried>;
  /** A link that makes the owner, once, within half an hour. */
  makeSetupLink(): Promise<string>;
  checkSetupLink(token: string): Promise<boolean>;
  useSetupLinks(): Promise<void>;
}

const LINK_MS = 30 * 60_000;

/** `elapsed` is any clock in ms that only ever goes forward. */
export function openAccess(
  file: SqliteFile,
  pepper: Uint8Array,
  clock: () => Instant,
  random: (bytes: number) => Uint8Array,
  elapsed: () => number = () => performance.now(),
): Access {
  const { attempt, ...tries } = openTries(file, elapsed);
  return {
    ...openDevices(file, clock, random),
    ...openDrafts({ file, pepper, clock, random, elapsed }),
    ...openSessions(file, clock, random),
    ...openSetupLinks(file, clock, random),
    ...tries,
    async setCredential(person, kind, secret) {
      const hashed = await hash(secret, { secret: pepper });
      await file.write(async (tx) => {
        const args = [person, kind, hashed, clock()];
        await tx.run('INSERT OR REPLACE INTO credential (person, kind, hash, set_at) VALUES (?, ?, ?, ?)', args);
        await tx.run('DELETE FROM session WHERE person = ?', [person]);
        await tx.run('DELETE FROM attempt WHERE person = ? AND kind = ?', [person, kind]);
        await tx.run('DELETE FROM own_screen WHERE person = ?', [person]);
      });
    },
    hasCredential: async (person, kind = 'pin') =>
      (await file.read('SELECT 1 FROM credential WHERE person = ? AND kind = ?', [person, kind])).length > 0,
    async tryCredential(person, token, kind, secret) {
      const place = token !== null && (await isOwn(file, person, token)) ? base64url(hashOfToken(token)) : '';
      const tried = await attempt({ person, kind, place }, async () => {
        const [row] = await file.read('SELECT hash FROM credential WHERE person = ? AND kind = ?', [person, kind]);
        return row !== undefined && (await verify(String(row.hash), secret, { secret: pepper }));
      });
      if (tried.is === 'right' && token !== null && place === '')
        await file.write((tx) =>
          tx.run('INSERT OR IGNORE INTO own_screen (person, token_hash) VALUES (?, ?)', [person, hashOfToken(token)]),
        );
      return tried;
    },
  };
}

/** Whether the token is of a session of that person, or of a screen at which they have signed in. */
async function isOwn(file: SqliteFile, person: Ref<'person'>, token: string): Promise<boolean> {
  const sql = `SELECT 1 FROM session WHERE token_hash = ?1 AND person = ?2
    UNION ALL SELECT 1 FROM own_screen WHERE token_hash = ?1 AND person = ?2`;
  return (await file.read(sql, [hashOfToken(token), person])).length > 0;
}

function openSetupLinks(
  file: SqliteFile,
  clock: () => Instant,
  random: (bytes: number) => Uint8Array,
): Pick<Access, 'makeSetupLink' | 'checkSetupLink' | 'useSetupLinks'> {
  return {
    async makeSetupLink() {
      const token = base64url(random(32));
      const sql = 'INSERT INTO setup_link (token_hash, expires_at) VALUES (?, ?)';
      await file.write((tx) => tx.run(sql, [hashOfToken(token), clock() + LINK_MS]));
      return token;
    },
    async checkSetupLink(token) {
      const sql = 'SELECT 1 FROM setup_link WHERE token_hash = ? AND expires_at BETWEEN ? AND ?';
      return (await file.read(sql, [hashOfToken(token), clock(), clock() + LINK_MS + SLACK_MS])).length > 0;
    },
    useSetupLinks: () => file.write((tx) => tx.run('DELETE FROM setup_link', [])),
  };
}
