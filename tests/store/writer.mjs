// Writes notes and photographs under load until it is killed: node writer.mjs <folder of the built program> <data> <sql> <job> <person> <prefix>.
// Prints the id of each command once its answer has come.
import { randomBytes } from 'node:crypto';
import { join } from 'node:path';
import sharp from 'sharp';

const [, , built, dir, sqlDir, job, by, prefix] = process.argv;
const { openStore } = await import(join(built, 'store/open.js'));
const { keepPhoto } = await import(join(built, 'store/photos.js'));
const store = await openStore({ dir, sqlDir, clock: () => Date.now(), random: (bytes) => new Uint8Array(randomBytes(bytes)) });

/** A picture like no other. */
async function photograph() {
  const create = { width: 8, height: 8, channels: 3, background: { r: 0, g: 0, b: 0 }, noise: { type: 'gaussian', mean: 128, sigma: 60 } };
  const kept = await keepPhoto(join(dir, 'photos'), await sharp({ create }).png().toBuffer());
  return kept.hash;
}

async function call(caller) {
  for (let turn = 0; ; turn++) {
    const id = `${prefix}-${caller}-${turn}`;
    const lines = [0, 1].slice(turn % 2).map((part) => ({ type: 'note_added', data: { about: job, text: `${id} ${part}` } }));
    if (turn % 4 === 1) lines[0] = { type: 'photo_added', data: { about: job, photo: await photograph(), shows: 'whole' } };
    const answer = await store.record({ id, by, auth: 'session', device: 'writer', seen: {}, lines });
    if (answer.answer !== 'written') throw new Error(JSON.stringify(answer));
    process.stdout.write(`${id}\n`);
  }
}
await Promise.all(Array.from({ length: 8 }, (_, caller) => call(caller)));
