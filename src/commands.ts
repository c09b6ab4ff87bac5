// What the command line can do. Each command says how it is called, what it does and which endings it has; all but import ask for a ledger that is there.
import { copyFileSync, createReadStream, existsSync, mkdirSync, rmSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { createInterface } from 'node:readline';
import { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import type { ParseArgsConfig } from 'node:util';
import { base64 } from './log/bytes.ts';
import { clock, openData, random, SQL_DIR } from './machine.ts';
import { thingsOfKind } from './queries/things.ts';
import { openAccess } from './store/access.ts';
import { checkData } from './store/check.ts';
import { askForLedger, originOf } from './store/present.ts';
import { rebuild } from './store/replay.ts';
import { copyFile, openReading } from './store/sqlite.ts';
import { exportLines, importLines } from './store/transfer.ts';
import type { Ref } from './units/ids.ts';

/** Asked wrongly: told with how it is called, and ends with 2. */
export class Misused extends Error {}

export interface CommandOfLine {
  readonly called: string;
  readonly does: string;
  /** More than the first line, for its own help. */
  readonly help: string;
  /** How many words besides options. */
  readonly takes: number;
  readonly options?: ParseArgsConfig['options'];
  /** Runs it on a data directory; answers how it ended: 0 done, 1 not. */
  run(dir: string, given: readonly string[], options: Readonly<Record<string, unknown>>): Promise<number>;
}

export const COMMANDS: Readonly<Record<string, CommandOfLine>> = {
  'verify-log': {
    called: 'verify-log',
    takes: 0,
    does: 'is the record whole and unaltered? names the first bad place',
    help: 'Runs beside a server. Ends with 0 when everything is whole, with 1 when something is not or could not be read.',
    async run(dir) {
      const found = await checkData(resolve(dir), SQL_DIR, progress('checked'));
      if ('bad' in found) {
        console.error(found.bad.say);
        return 1;
      }
      const { size, root, signatures, opened, photographs, told } = found;
      console.log(`${size} entries, whole and unaltered; root ${base64(root)}; ${signatures} signatures good.`);
      console.log(`${opened} sealed values and ${photographs} photographs fit their digests.`);
      for (const sentence of told) console.log(sentence);
      return 0;
    },
  },
  export: {
    called: 'export > FILE',
    takes: 0,
    does: 'every entry as JSON Lines, to standard output',
    help: 'Runs beside a server, and holds one moment. Sealed values go out sealed: keep keys.db and keys/seed with it.',
    async run(dir) {
      askForLedger(resolve(dir));
      const ledger = openReading(join(resolve(dir), 'ledger.db'));
      await ledger.snapshot(async (read) => {
        const origin = await originOf(read);
        const lines = async function* () {
          for await (const line of exportLines(read, origin)) yield `${line}\n`;
        };
        await pipeline(Readable.from(lines()), process.stdout, { end: false }).catch(onlyClosedPipe);
      });
      await ledger.close();
      return 0;
    },
  },
  import: {
    called: 'import FILE --keys FOLDER',
    takes: 1,
    does: 'an export into a data directory that holds nothing yet',
    help:
      'FOLDER is the data directory the export came from, or its backup: keys/seed and keys.db are copied from there.\n' +
      'With --without-keys instead, the entries are kept and can be exported; the program starts on them once both are put back.',
    options: { keys: { type: 'string' }, 'without-keys': { type: 'boolean' } },
    run: importFile,
  },
  rebuild: {
    called: 'rebuild',
    takes: 0,
    does: 'folds what the screens show anew from the entries',
    help: 'Stop the server first. Entries are read and never changed.',
    async run(dir) {
      const store = await openData(dir, { existing: true });
      console.log(`${await rebuild(store.file, store.keys, progress('read'))} entries read; the screens follow from them again.`);
      await store.close();
      return 0;
    },
  },
  'owner-pin': {
    called: 'owner-pin < FILE',
    takes: 0,
    does: 'a new PIN for the owner, read from standard input',
    help: 'Stop the server first. Type the PIN of 4 to 8 figures and Enter; on the command line others could read it.',
    async run(dir) {
      const [pin = ''] = await linesOf(process.stdin, 1);
      if (!/^\d{4,8}$/.test(pin)) throw new Misused('Give a PIN of 4 to 8 figures.');
      const store = await openData(dir, { existing: true });
      const people = await thingsOfKind(store, 'person');
      const owner = people.find(({ role }) => role === 'owner');
      if (owner) await openAccess(store.access, store.pepper, clock, random).setCredential(owner.id as Ref<'person'>, 'pin', pin);
      await store.close();
      console.log(owner ? 'The owner has a new PIN.' : 'This ledger has no owner yet: start the program and open its one-time link.');
      return owner ? 0 : 1;
    },
  },
};

const KEY_FILES = ['keys/seed', 'keys.db'] as const;

async function importFile(dir: string, [path]: readonly string[], options: Readonly<Record<string, unknown>>): Promise<number> {
  if (path === undefined) throw new Misused('Name the file to import.');
  if (!existsSync(path)) throw new Misused(`There is no file ${path}; nothing was made.`);
  const from = typeof options.keys === 'string' ? options.keys : null;
  if (from === null && options['without-keys'] !== true) {
    throw new Misused(
      'Name the folder of its keys with --keys: without keys/seed nothing can be written on, and without keys.db no name can be read. Or say --without-keys, and put both back later.',
    );
  }
  if (existsSync(join(dir, 'ledger.db'))) throw new Misused(`${dir} holds a ledger already. Import into an empty directory.`);
  const missing = from === null ? undefined : KEY_FILES.find((name) => !existsSync(join(from, name)));
  if (from !== null && missing) throw new Misused(`There is no ${missing} in ${from}; nothing was made.`);
  const wasThere = existsSync(dir);
  try {
    if (from !== null) {
      mkdirSync(join(dir, 'keys'), { recursive: true, mode: 0o700 });
      copyFileSync(join(from, 'keys', 'seed'), join(dir, 'keys', 'seed'));
      await copyFile(join(from, 'keys.db'), join(dir, 'keys.db'));
    }
    const store = await openData(dir, { importing: true });
    try {
      const lines = createInterface({ input: createReadStream(path), crlfDelay: Number.POSITIVE_INFINITY });
      const size = await importLines(store.file, store.keys, lines, from === null ? undefined : store.logKey.publicKey);
      await store.noteAll();
      console.log(
        `${size} entries imported.${from === null ? ` The program starts on them once keys/seed and keys.db are put into ${dir}.` : ''}`,
      );
    } finally {
      await store.close();
    }
    // Those that were made meanwhile belong to no ledger: without them the start asks for the right ones.
    if (from === null) for (const name of ['keys', 'keys.db']) rmSync(join(dir, name), { recursive: true, force: true });
    return 0;
  } catch (error) {
    if (!wasThere) rmSync(dir, { recursive: true, force: true });
    throw error;
  }
}

async function linesOf(input: NodeJS.ReadableStream, count: number): Promise<readonly string[]> {
  const lines: string[] = [];
  for await (const line of createInterface({ input })) if (lines.push(line.trim()) === count) break;
  return lines;
}

/** Whoever reads the export may stop reading it. */
function onlyClosedPipe(error: NodeJS.ErrnoException): void {
  if (error.code !== 'EPIPE' && error.code !== 'ERR_STREAM_PREMATURE_CLOSE') throw error;
}

/** A line every second while something long goes on. */
function progress(what: string): (done: number) => void {
  let last = clock();
  return (done) => {
    if (clock() - last < 1000) return;
    last = clock();
    process.stderr.write(`${done} entries ${what}\n`);
  };
}
