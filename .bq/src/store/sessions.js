// Bench sessions: begun by a PIN, locked after ten idle minutes, over after twelve hours. Of a token only its hash is kept.
import { base64url } from '../log/bytes.js';
import { sha256 } from './crypto.js';

const IDLE_MS = 10 * 60_000;
const LIFE_MS = 12 * 3_600_000;
/** A sign of life is written down at most so often. */
const NOTED_MS = 30_000;
/** By how much a clock may be put back before what it said earlier counts for nothing. */
export const SLACK_MS = 60_000;
export const hashOfToken = (token) => sha256(new TextEncoder().encode(token));
/** Whether `at` lies within the last `withinMs`; a time that has not come yet was said by a wrong clock and is no time. */
const isRecent = (at, withinMs, now) => at <= now + SLACK_MS && now - at <= withinMs;
export function openSessions(file, clock, random) {
  const run = (sql, args) => file.write((tx) => tx.run(sql, args));
  return {
    async beginSession(person, device) {
      const token = base64url(random(32));
      const now = clock();
      await file.write(async (tx) => {
        await tx.run('DELETE FROM session WHERE begun_at NOT BETWEEN ? AND ?', [now - LIFE_MS, now + SLACK_MS]);
        const args = [hashOfToken(token), person, device, now, now];
        await tx.run('INSERT INTO session (token_hash, person, device, begun_at, seen_at) VALUES (?, ?, ?, ?, ?)', args);
      });
      return token;
    },
    async session(token, isWatching = false) {
      const [hash, now] = [hashOfToken(token), clock()];
      const [row] = await file.read('SELECT person, device, begun_at, seen_at, locked_at FROM session WHERE token_hash = ?', [hash]);
      if (!row || !isRecent(Number(row.begun_at), LIFE_MS, now)) return null;
      const seenAt = Number(row.seen_at);
      const goesIdle = row.locked_at === null && !isRecent(seenAt, IDLE_MS, now);
      if (goesIdle) await run('UPDATE session SET locked_at = ? WHERE token_hash = ?', [now, hash]);
      else if (row.locked_at === null && !isWatching && Math.abs(now - seenAt) > NOTED_MS)
        await run('UPDATE session SET seen_at = ? WHERE token_hash = ?', [now, hash]);
      const lockedAt = goesIdle ? now : row.locked_at === null ? null : Number(row.locked_at);
      return { person: String(row.person), device: String(row.device), lockedAt };
    },
    endSession: (token) =>
      file.write(async (tx) => {
        await tx.run('DELETE FROM session WHERE token_hash = ?', [hashOfToken(token)]);
        await tx.run('DELETE FROM attempt WHERE place = ?', [base64url(hashOfToken(token))]);
      }),
  };
}
