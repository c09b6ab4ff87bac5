// Screens that may be used on the shop's network: enrolled once by a link that works once, known afterwards by a long token of their own.
import { base64url } from '../log/bytes.ts';
import type { Instant } from '../units/dates.ts';
import type { Ref } from '../units/ids.ts';
import { hashOfToken, SLACK_MS } from './sessions.ts';
import type { SqliteFile } from './sqlite.ts';

export interface Enrolment {
  readonly name: string;
  readonly kind: string;
  readonly by: Ref<'person'>;
}
export interface Device {
  readonly id: string;
  readonly name: string;
  readonly enrolledAt: number;
}
export interface Devices {
  /** A link that enrols one screen, once, within half an hour. */
  makeEnrolLink(enrolment: Enrolment): Promise<string>;
  enrolLink(token: string): Promise<Enrolment | null>;
  /** Takes the link and keeps the screen under this id; answers its token, of which only the hash is kept, or null where the link was taken before. */
  enrol(link: string, id: string): Promise<string | null>;
  device(token: string): Promise<Device | null>;
  devices(): Promise<readonly Device[]>;
  /** Ends a screen and every session on it. */
  endDevice(id: string): Promise<void>;
}

const LINK_MS = 30 * 60_000;
/** A link of this hash that has not run out; one said to run out later than any can was made by a wrong clock. */
const LIVE = 'token_hash = ? AND expires_at BETWEEN ? AND ?';

export const openDevices = (file: SqliteFile, clock: () => Instant, random: (bytes: number) => Uint8Array): Devices => ({
  ...enrolments(file, clock, random),
  ...screens(file),
});

function enrolments(
  file: SqliteFile,
  clock: () => Instant,
  random: (bytes: number) => Uint8Array,
): Pick<Devices, 'makeEnrolLink' | 'enrolLink' | 'enrol'> {
  const live = (token: string) => [hashOfToken(token), clock(), clock() + LINK_MS + SLACK_MS];
  return {
    async makeEnrolLink({ name, kind, by }) {
      const token = base64url(random(32));
      await file.write(async (tx) => {
        await tx.run('DELETE FROM enrol_link WHERE expires_at NOT BETWEEN ? AND ?', [clock(), clock() + LINK_MS + SLACK_MS]);
        const args = [hashOfToken(token), name, kind, by, clock() + LINK_MS];
        await tx.run('INSERT INTO enrol_link (token_hash, name, kind, made_by, expires_at) VALUES (?, ?, ?, ?, ?)', args);
      });
      return token;
    },
    async enrolLink(token) {
      const [row] = await file.read(`SELECT name, kind, made_by FROM enrol_link WHERE ${LIVE}`, live(token));
      return row ? { name: String(row.name), kind: String(row.kind), by: String(row.made_by) as Ref<'person'> } : null;
    },
    async enrol(link, id) {
      const token = base64url(random(32));
      return file.write(async (tx) => {
        const [row] = await tx.all(`SELECT name FROM enrol_link WHERE ${LIVE}`, live(link));
        if (!row) return null;
        await tx.run('DELETE FROM enrol_link WHERE token_hash = ?', [hashOfToken(link)]);
        const args = [id, hashOfToken(token), String(row.name), clock()];
        await tx.run('INSERT INTO device (id, token_hash, name, enrolled_at) VALUES (?, ?, ?, ?)', args);
        return token;
      });
    },
  };
}

const screens = (file: SqliteFile): Pick<Devices, 'device' | 'devices' | 'endDevice'> => ({
  async device(token) {
    const [row] = await file.read('SELECT id, name, enrolled_at FROM device WHERE token_hash = ?', [hashOfToken(token)]);
    return row ? deviceOf(row) : null;
  },
  devices: async () => (await file.read('SELECT id, name, enrolled_at FROM device ORDER BY enrolled_at', [])).map(deviceOf),
  endDevice: (id) =>
    file.write(async (tx) => {
      await tx.run('DELETE FROM session WHERE device = ?', [id]);
      await tx.run('DELETE FROM device WHERE id = ?', [id]);
    }),
});

const deviceOf = (row: { readonly [column: string]: unknown }): Device => ({
  id: String(row.id),
  name: String(row.name),
  enrolledAt: Number(row.enrolled_at),
});
