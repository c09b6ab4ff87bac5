// The command line: thin; each command is a few calls of the store.
import { createReadStream } from 'node:fs';
import { createInterface } from 'node:readline';
import { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import { base64 } from './log/bytes.js';
import { clock, openData, random } from './machine.js';
import { thingsOfKind } from './queries/things.js';
import { openAccess } from './store/access.js';
import { rebuild } from './store/replay.js';
import { exportLines, importLines } from './store/transfer.js';

const USAGE = `lemel verify-log            is the record whole and unaltered? names the first bad place
lemel export                every entry as JSON Lines, to standard output
lemel import FILE           an export into an empty data directory
lemel rebuild               folds what the screens show anew from the entries
lemel owner-pin PIN         a new PIN for the owner
LEMEL_DATA names the data directory (./data).`;
const COMMANDS = {
  async 'verify-log'(store) {
    const found = await store.check(progress('checked'));
    if ('bad' in found) {
      console.error(found.bad.say);
      return 1;
    }
    console.log(`${found.size} entries, whole and unaltered; root ${base64(found.root)}; ${found.signatures} signatures good.`);
    return 0;
  },
  async export(store) {
    await store.snapshot(async (read) => {
      const lines = async function* () {
        for await (const line of exportLines(read, store.log)) yield `${line}\n`;
      };
      await pipeline(Readable.from(lines()), process.stdout, { end: false }).catch(onlyClosedPipe);
    });
    return 0;
  },
  async import(store, path) {
    if (path === undefined) return usage();
    const size = await importLines(
      store.file,
      store.keys,
      createInterface({ input: createReadStream(path), crlfDelay: Number.POSITIVE_INFINITY }),
    );
    console.log(`${size} entries imported.`);
    return 0;
  },
  async rebuild(store) {
    console.log(`${await rebuild(store.file, store.keys, progress('read'))} entries read; the screens follow from them again.`);
    return 0;
  },
  async 'owner-pin'(store, pin) {
    if (pin === undefined || !/^\d{4,8}$/.test(pin)) return usage('Give a PIN of 4 to 8 figures.');
    const people = await thingsOfKind(store, 'person');
    const owner = people.find(({ role }) => role === 'owner');
    if (!owner) return usage('This ledger has no owner yet: start the program and open its one-time link.');
    await openAccess(store.access, store.pepper, clock, random).setCredential(owner.id, 'pin', pin);
    console.log('The owner has a new PIN.');
    return 0;
  },
};
function usage(problem) {
  console.error(problem ?? USAGE);
  return 2;
}
/** Whoever reads the export may stop reading it. */
function onlyClosedPipe(error) {
  if (error.code !== 'EPIPE' && error.code !== 'ERR_STREAM_PREMATURE_CLOSE') throw error;
}
/** A line every second while something long goes on. */
function progress(what) {
  let last = clock();
  return (done) => {
    if (clock() - last < 1000) return;
    last = clock();
    process.stderr.write(`${done} entries ${what}\n`);
  };
}
const [name, argument] = process.argv.slice(2);
const command = name !== undefined && Object.hasOwn(COMMANDS, name) ? COMMANDS[name] : undefined;
if (!command) process.exit(usage());
try {
  const store = await openData(process.env.LEMEL_DATA ?? 'data');
  const code = await command(store, argument);
  await store.close();
  process.exitCode = code;
} catch (error) {
  console.error(error.message);
  process.exit(1);
}
