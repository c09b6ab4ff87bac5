// What leaves hold only the digest of: sealed values, opened and compared where their key is there, and photographs, hashed anew.
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { hex } from '../log/bytes.ts';
import type { Json } from '../log/canonical.ts';
import { checkSealed } from '../log/leaf.ts';
import { type Beside, bad, type Checked, type Counted } from './beside.ts';
import { sha256 } from './crypto.ts';
import type { KeysRead } from './keys.ts';
import { subjectOf } from './rows.ts';
import { openOne } from './shelf.ts';
import type { Query } from './sqlite.ts';

type Row = { readonly [column: string]: unknown };

/** Every sealed field has its value, sealed by the key it should be and fitting the digest in the leaf, and there is no other. */
export function sealedBeside(read: Query, keys: KeysRead, counted: Counted): Beside {
  let shop: string | undefined;
  let seen = 0;
  const sql = 'SELECT seq, field, subject, iv, ciphertext FROM sealed WHERE seq >= ? AND seq < ? ORDER BY seq';

  async function troubleWith({ leaf }: Checked, field: string, row: Row | undefined): Promise<string | null> {
    if (!row) return 'is gone';
    if (row.subject !== (await subjectOf(read, leaf, shop))) return 'is said to be somebody else’s';
    const opened = await openOne(keys, leaf.log, leaf.seq, row);
    if (opened) {
      counted.opened++;
      return checkSealed(sha256, leaf, opened.salt, field, opened.value as Json) ? null : 'is not what was sealed';
    }
    if (await keys.holds(String(row.subject))) return 'does not open with the key that is there';
    counted.closed++;
    return null;
  }

  return {
    async look(chunk) {
      shop ??= chunk[0]?.leaf.links[0].s;
      const first = chunk[0]?.leaf.seq ?? 0;
      const rows = new Map((await read(sql, [first, first + chunk.length])).map((row) => [`${row.seq} ${row.field}`, row]));
      for (const one of chunk) {
        const { seq, sealed = {} } = one.leaf;
        for (const field of Object.keys(sealed)) {
          const trouble = await troubleWith(one, field, rows.get(`${seq} ${field}`));
          if (trouble) return bad(seq, 'sealed', `Entry ${seq}: the sealed ${field} ${trouble}.`);
          seen++;
        }
      }
      return null;
    },
    async end() {
      const [row] = await read('SELECT COUNT(*) AS n FROM sealed');
      return Number(row?.n) === seen ? null : bad(null, 'sealed', 'There are sealed values that no entry sealed.');
    },
  };
}

/** Every photograph that is there is the one its entry names; those that are not are counted, for they may be deleted. */
export function photographsBeside(dir: string, counted: Counted): Beside {
  const looked = new Set<string>();
  return {
    async look(chunk) {
      for (const { leaf } of chunk) {
        const hash = leaf.data.photo;
        if (typeof hash !== 'string' || looked.has(hash)) continue;
        looked.add(hash);
        const bytes = await readFile(join(dir, `${hash}.webp`)).catch(() => null);
        if (!bytes) counted.photographsMissing++;
        else if (hex(sha256(bytes)) === hash) counted.photographs++;
        else return bad(leaf.seq, 'photograph', `Entry ${leaf.seq}: its photograph is not the one that was taken.`);
      }
      return null;
    },
    end: async () => null,
  };
}
