// Keeps a photograph where no file may grow beyond a few kilobytes, and says what came of it: node full.mjs <folder of the built program> <folder>.
import { join } from 'node:path';
import sharp from 'sharp';

const [, , built, dir] = process.argv;
const { keepPhoto } = await import(join(built, 'store/photos.js'));
const create = {
  width: 900,
  height: 900,
  channels: 3,
  background: { r: 0, g: 0, b: 0 },
  noise: { type: 'gaussian', mean: 128, sigma: 90 },
};
const upload = await sharp({ create }).png().toBuffer();
const came = await keepPhoto(dir, upload).catch((error) => ({ code: error.code, say: error.message }));
process.stdout.write(JSON.stringify(came));
