// Screens that may be used on the shop's network: enrolled once by a link that works once, known afterwards by a long token of their own.
import { base64url } from '../log/bytes.js';
import { hashOfToken, SLACK_MS } from './sessions.js';

const LINK_MS = 30 * 60_000;
/** A link of this hash that has not run out; one said to run out later than any can was made by a wrong clock. */
const LIVE = 'token_hash = ? AND expires_at BETWEEN ? AND ?';
export function openDevices(file, clock, random) {
  const live = (token) => [hashOfToken(token), clock(), clock() + LINK_MS + SLACK_MS];
  const deviceOf = (row) => ({
    id: String(row.id),
    name: String(row.name),
    enrolledAt: Number(row.enrolled_at),
  });
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
      return row ? { name: String(row.name), kind: String(row.kind), by: String(row.made_by) } : null;
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
  };
}
