// The check of a whole data directory, beside whoever writes it: it reads through connections of its own, and needs no lock.
import { join } from 'node:path';
import { formatVerifierKey, verifierKey } from '../log/note.ts';
import { pageTrouble } from './at-start.ts';
import { auditLog } from './audit.ts';
import { type Audit, type Bad, bad } from './beside.ts';
import { connect } from './connection.ts';
import { sha256, signerOf } from './crypto.ts';
import { keysOn } from './keys.ts';
import { sizeOf } from './memory.ts';
import { checkSchema, SchemaMismatch } from './migrate.ts';
import { askForLedger, askForWhole, originOf } from './present.ts';
import { readSecret } from './secrets.ts';
import { openReading, type Query } from './sqlite.ts';

/** Checks everything that can be shown to follow from the leaves, as of one moment. Throws NoLedger, Missing, SchemaMismatch or StorageFault. */
export async function checkData(dir: string, sqlDir: string, progress: (done: number) => void = () => undefined): Promise<Audit> {
  askForLedger(dir);
  await askForWhole(dir);
  const [ledger, keys] = [openReading(join(dir, 'ledger.db')), openReading(join(dir, 'keys.db'))];
  try {
    const wrong = (await schemaTrouble(ledger.read, sqlDir, 'ledger')) ?? (await schemaTrouble(keys.read, sqlDir, 'keys'));
    if (wrong) return wrong;
    const path = join(dir, 'checkpoints.log');
    // What is noted was committed before: measured first, it never counts more than the moment that is checked.
    const memory = { path, bytes: sizeOf(path) };
    const found = await ledger.snapshot(async (read) => {
      const log = await originOf(read);
      const known = log === '' ? {} : { vkey: vkeyIn(dir, log) };
      return auditLog({ read, log, keys: keysOn(keys.read), memory, photosDir: join(dir, 'photos'), ...known }, progress);
    });
    if ('bad' in found) return found;
    for (const file of [ledger, keys]) {
      const damage = await pageTrouble(file.read, 'integrity_check');
      if (damage) return bad(null, 'damaged', damage);
    }
    return findTrouble(join(dir, 'ledger.db')) ?? found;
  } finally {
    for (const file of [ledger, keys]) await file.close();
  }
}

async function schemaTrouble(read: Query, sqlDir: string, family: string): Promise<Bad | null> {
  try {
    await checkSchema(read, sqlDir, family);
    return null;
  } catch (error) {
    if (error instanceof SchemaMismatch) return bad(null, 'schema', error.message);
    throw error;
  }
}

function vkeyIn(dir: string, log: string): string {
  const key = verifierKey(sha256, log, 1, signerOf(readSecret(join(dir, 'keys'), 'seed')).publicKey);
  if ('refused' in key) throw new Error(key.say);
  return formatVerifierKey(key);
}

const INDEX_ANEW: readonly string[] = [
  'BEGIN',
  "CREATE VIRTUAL TABLE temp.due USING fts5 (words, content = '', tokenize = 'trigram remove_diacritics 1')",
  'INSERT INTO temp.due (rowid, words) SELECT n, words FROM main.thing',
  'CREATE VIRTUAL TABLE temp.words_due USING fts5vocab (temp, due, instance)',
  'CREATE VIRTUAL TABLE temp.words_found USING fts5vocab (main, find, instance)',
];
const DIFFERENCE = (a: string, b: string) =>
  `SELECT term, doc, offset FROM temp.${a} EXCEPT SELECT term, doc, offset FROM temp.${b} LIMIT 1`;

/** Makes the index of the Find box anew beside the file, from the things as they were checked, and compares the two. */
function findTrouble(path: string): Bad | null {
  const db = connect(path, 'read');
  try {
    for (const statement of INDEX_ANEW) db.run(statement, []);
    const differs = [DIFFERENCE('words_due', 'words_found'), DIFFERENCE('words_found', 'words_due')].some(
      (sql) => db.all(sql, []).length > 0,
    );
    return differs ? bad(null, 'find', 'The index of the Find box does not hold what the things say. Run: lemel rebuild.') : null;
  } finally {
    db.close();
  }
}
