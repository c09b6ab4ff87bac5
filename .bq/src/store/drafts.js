// What was typed and not written yet, by its form's own key: encrypted, since a form may hold what the ledger seals, and kept a fortnight.
import { base64url, bytesOfBase64url } from '../log/bytes.js';
import { decrypt, encrypt, hmac } from './crypto.js';

const KEPT_MS = 14 * 86_400_000;
/** Nobody's drafts are few and short-lived, so that no stranger fills the disk. */
const NOBODYS_MS = 3_600_000;
const NOBODYS_MAX = 20;
const IV_BYTES = 12;
export function openDrafts(file, pepper, clock, random) {
  const key = hmac(pepper, 'drafts');
  const shut = (formKey, text) => {
    const iv = random(IV_BYTES);
    return base64url(Buffer.concat([iv, encrypt(key, iv, new TextEncoder().encode(text), formKey)]));
  };
  const opened = (row) => {
    const bytes = bytesOfBase64url(String(row.fields));
    const plain = bytes && decrypt(key, bytes.subarray(0, IV_BYTES), bytes.subarray(IV_BYTES), String(row.form_key));
    if (!plain) return [];
    const fields = new TextDecoder().decode(plain);
    return [{ key: String(row.form_key), path: String(row.path), fields, savedAt: Number(row.saved_at) }];
  };
  return {
    async saveDraft(formKey, writer, path, fields) {
      await file.write(async (tx) => {
        await tx.run('DELETE FROM draft WHERE saved_at < ?', [clock() - KEPT_MS]);
        await tx.run("DELETE FROM draft WHERE person = 'nobody' AND saved_at < ?", [clock() - NOBODYS_MS]);
        const [held] = await tx.all('SELECT person FROM draft WHERE form_key = ?', [formKey]);
        if (held && held.person !== writer && held.person !== 'nobody') return;
        const [{ n } = { n: 0 }] = await tx.all("SELECT COUNT(*) AS n FROM draft WHERE person = 'nobody'", []);
        if (writer === 'nobody' && Number(n) >= NOBODYS_MAX) return;
        const args = [formKey, writer, path, shut(formKey, fields), clock()];
        await tx.run('INSERT OR REPLACE INTO draft (form_key, person, path, fields, saved_at) VALUES (?, ?, ?, ?, ?)', args);
      });
    },
    async draft(formKey, person) {
      const sql = "SELECT form_key, path, fields, saved_at FROM draft WHERE form_key = ? AND person IN (?, 'nobody')";
      return (await file.read(sql, [formKey, person])).flatMap(opened)[0] ?? null;
    },
    async draftsOf(person) {
      const sql = 'SELECT form_key, path, fields, saved_at FROM draft WHERE person = ? ORDER BY saved_at DESC LIMIT 20';
      return (await file.read(sql, [person])).flatMap(opened);
    },
    dropDraft: async (formKey) => {
      await file.write((tx) => tx.run('DELETE FROM draft WHERE form_key = ?', [formKey]));
    },
  };
}
