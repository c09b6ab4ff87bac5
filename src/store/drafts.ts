// What was typed and not written yet, by its form's own key: encrypted, since a form may hold what the ledger seals, and kept a fortnight of
// the program's own elapsed time. The clock forgets none: it may be wrong by years, and what was typed would be gone.
import { base64url, bytesOfBase64url } from '../log/bytes.ts';
import type { Instant } from '../units/dates.ts';
import type { Ref } from '../units/ids.ts';
import { decrypt, encrypt, hmac } from './crypto.ts';
import type { SqliteFile } from './sqlite.ts';

export interface Draft {
  readonly key: string;
  readonly path: string;
  readonly fields: string;
  readonly savedAt: number;
}
/** Whose a draft is: a person's, or nobody's where their session had ended when it came; the form's key then opens it. */
export type DraftOwner = Ref<'person'> | 'nobody';
export interface Drafts {
  saveDraft(formKey: string, owner: DraftOwner, path: string, fields: string): Promise<void>;
  /** The draft of that key, the person's own or nobody's. */
  draft(formKey: string, person: Ref<'person'>): Promise<Draft | null>;
  /** The person's own, newest first. */
  draftsOf(person: Ref<'person'>): Promise<readonly Draft[]>;
  dropDraft(formKey: string): Promise<void>;
}

const KEPT_MS = 14 * 86_400_000;
const KEPT_MAX = 100;
/** Nobody's drafts are few and short-lived, so that no stranger fills the disk. */
const NOBODYS_MS = 3_600_000;
const NOBODYS_MAX = 20;
const IV_BYTES = 12;

interface DraftDeps {
  readonly file: SqliteFile;
  readonly pepper: Uint8Array;
  /** For the time that is shown, and for nothing else. */
  readonly clock: () => Instant;
  readonly random: (bytes: number) => Uint8Array;
  /** Any clock in ms that only ever goes forward. */
  readonly elapsed: () => number;
}

export function openDrafts({ file, pepper, clock, random, elapsed }: DraftDeps): Drafts {
  const { shut, opened } = envelope(hmac(pepper, 'drafts'), random);
  const ages = agesBy(elapsed);
  return {
    async saveDraft(formKey, owner, path, fields) {
      await file.write(async (tx) => {
        for (const old of ages.outlived(await tx.all('SELECT form_key, person FROM draft ORDER BY saved_at'))) {
          await tx.run('DELETE FROM draft WHERE form_key = ?', [old]);
          ages.end(old);
        }
        const [held] = await tx.all('SELECT person FROM draft WHERE form_key = ?', [formKey]);
        if (held && held.person !== owner && held.person !== 'nobody') return;
        const [{ n } = { n: 0 }] = await tx.all("SELECT COUNT(*) AS n FROM draft WHERE person = 'nobody'", []);
        if (owner === 'nobody' && Number(n) >= NOBODYS_MAX) return;
        const args = [formKey, owner, path, shut(formKey, fields), clock()];
        await tx.run('INSERT OR REPLACE INTO draft (form_key, person, path, fields, saved_at) VALUES (?, ?, ?, ?, ?)', args);
        ages.begin(formKey);
      });
    },
    async draft(formKey, person) {
      const sql = "SELECT form_key, path, fields, saved_at FROM draft WHERE form_key = ? AND person IN (?, 'nobody')";
      return (await file.read(sql, [formKey, person])).flatMap(opened)[0] ?? null;
    },
    async draftsOf(person) {
      const sql = 'SELECT form_key, path, fields, saved_at FROM draft WHERE person = ? ORDER BY saved_at DESC';
      return (await file.read(sql, [person])).flatMap(opened);
    },
    dropDraft: async (formKey) => {
      await file.write((tx) => tx.run('DELETE FROM draft WHERE form_key = ?', [formKey]));
      ages.end(formKey);
    },
  };
}

/** What was typed, encrypted for its row and opened from it; a row that was changed opens to nothing. */
function envelope(key: Uint8Array, random: (bytes: number) => Uint8Array) {
  return {
    shut(formKey: string, text: string): string {
      const iv = random(IV_BYTES);
      return base64url(Buffer.concat([iv, encrypt(key, iv, new TextEncoder().encode(text), formKey)]));
    },
    opened(row: { readonly [column: string]: unknown }): readonly Draft[] {
      const bytes = bytesOfBase64url(String(row.fields));
      const plain = bytes && decrypt(key, bytes.subarray(0, IV_BYTES), bytes.subarray(IV_BYTES), String(row.form_key));
      if (!plain) return [];
      const fields = new TextDecoder().decode(plain);
      return [{ key: String(row.form_key), path: String(row.path), fields, savedAt: Number(row.saved_at) }];
    },
  };
}

/** How long each draft was kept, as far as this program saw: of those that were there when it started, since then. */
function agesBy(elapsed: () => number) {
  const startedAt = elapsed();
  const since = new Map<string, number>();
  const begun = (formKey: unknown) => since.get(String(formKey)) ?? startedAt;
  return {
    begin: (formKey: string) => void since.set(formKey, elapsed()),
    end: (formKey: string) => void since.delete(formKey),
    /** Those kept long enough, and of each person's what is more than so many. */
    outlived(rows: readonly { readonly [column: string]: unknown }[]): readonly string[] {
      const kept = new Map<unknown, number>();
      const newestFirst = rows.toReversed().toSorted((a, b) => begun(b.form_key) - begun(a.form_key));
      return newestFirst.flatMap(({ form_key, person }) => {
        kept.set(person, (kept.get(person) ?? 0) + 1);
        const isOver = elapsed() - begun(form_key) > (person === 'nobody' ? NOBODYS_MS : KEPT_MS) || (kept.get(person) ?? 0) > KEPT_MAX;
        return isOver ? [String(form_key)] : [];
      });
    },
  };
}
