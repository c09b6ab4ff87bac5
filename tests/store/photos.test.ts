// Photographs as they are kept: made here as a camera would make them, and read back.
import { createHash } from 'node:crypto';
import { mkdtempSync, readdirSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import sharp from 'sharp';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { keepPhoto, readPhoto } from '../../src/store/photos.ts';

let dir: string;
beforeEach(() => {
  dir = join(mkdtempSync(join(tmpdir(), 'lemel-')), 'photos');
});
afterEach(() => rmSync(join(dir, '..'), { recursive: true }));

/** A camera's picture: 3000 × 2000 stored on its side, the left third red, with a place in its metadata. */
const fromCamera = () =>
  sharp({ create: { width: 3000, height: 2000, channels: 3, background: '#446' } })
    .composite([{ input: { create: { width: 1000, height: 2000, channels: 3, background: '#f00' } }, left: 0, top: 0 }])
    .withExif({ IFD0: { Make: 'Camera', Orientation: '6' }, IFD3: { GPSLatitude: '51/1 30/1 0/1' } })
    .withMetadata({ orientation: 6 })
    .jpeg()
    .toBuffer();

async function kept(upload: Uint8Array): Promise<string> {
  const photo = await keepPhoto(dir, upload);
  if (!('hash' in photo)) throw new Error(photo.say);
  return photo.hash;
}

describe('a photograph that is kept', () => {
  it('stands upright, is 2048 px at most, and carries nothing of where it was taken', async () => {
    const camera = await fromCamera();
    expect((await sharp(camera).metadata()).exif).toBeDefined();
    const bytes = await readPhoto(dir, await kept(camera));
    const found = await sharp(bytes ?? new Uint8Array()).metadata();
    expect(found).toMatchObject({ format: 'webp', width: 1365, height: 2048 });
    expect([found.exif, found.xmp, found.iptc, found.icc, found.orientation]).toEqual([
      undefined,
      undefined,
      undefined,
      undefined,
      undefined,
    ]);
    // Orientation 6 (EXIF 2.3, 4.6.4.A): the stored left side is shown at the top.
    const [red, , blue] = await sharp(bytes ?? new Uint8Array())
      .extract({ left: 600, top: 10, width: 1, height: 1 })
      .raw()
      .toBuffer();
    expect([(red ?? 0) > 200, (blue ?? 255) < 60]).toEqual([true, true]);
  });

  it('lies under the SHA-256 of its own bytes, once, for its owner alone', async () => {
    const camera = await fromCamera();
    const hash = await kept(camera);
    expect(await kept(camera)).toBe(hash);
    expect(readdirSync(dir)).toEqual([`${hash}.webp`]);
    const bytes = await readPhoto(dir, hash);
    expect(
      createHash('sha256')
        .update(bytes ?? new Uint8Array())
        .digest('hex'),
    ).toBe(hash);
    expect(statSync(join(dir, `${hash}.webp`)).mode & 0o777).toBe(0o600);
  });

  it('is shown to nobody where another lies under its name, and is put right by the picture itself', async () => {
    const camera = await fromCamera();
    const hash = await kept(camera);
    writeFileSync(join(dir, `${hash}.webp`), await sharp(camera).negate().webp().toBuffer());
    expect(await readPhoto(dir, hash)).toBeNull();
    expect(await kept(camera)).toBe(hash);
    expect(await readPhoto(dir, hash)).not.toBeNull();
  });

  it('is not made larger than it was', async () => {
    const small = await sharp({ create: { width: 40, height: 30, channels: 3, background: '#fff' } })
      .png()
      .toBuffer();
    const bytes = await readPhoto(dir, await kept(small));
    expect(await sharp(bytes ?? new Uint8Array()).metadata()).toMatchObject({ width: 40, height: 30 });
  });
});

describe('what is no photograph', () => {
  const heic = Buffer.concat([Buffer.from([0, 0, 0, 24]), Buffer.from('ftypheic'), Buffer.alloc(40)]);
  const drawing = Buffer.from('<svg xmlns="http://www.w3.org/2000/svg" width="9" height="9"><rect width="9" height="9"/></svg>');
  it.each([
    ['a text', Buffer.from('not a picture'), 'not an image'],
    ['nothing', Buffer.alloc(0), 'not an image'],
    ['a drawing that could name other files', drawing, 'not an image'],
    ['a HEIC from a phone', heic, 'phone format'],
  ])('%s is refused in words and leaves no file', async (_, upload, trouble) => {
    expect(await keepPhoto(dir, upload)).toMatchObject({ trouble });
    expect(await readPhoto(dir, '0'.repeat(64))).toBeNull();
  });

  it('is a picture cut short', async () => {
    const camera = await fromCamera();
    expect(await keepPhoto(dir, camera.subarray(0, camera.length / 2))).toMatchObject({ trouble: 'not an image' });
  });

  it('is one of more than 60 million pixels', async () => {
    const wide = await sharp({ create: { width: 8000, height: 7600, channels: 3, background: '#fff' } })
      .png()
      .toBuffer();
    expect(await keepPhoto(dir, wide)).toMatchObject({ trouble: 'too many pixels' });
  });

  it('is a name that is no hash', async () => {
    expect(await readPhoto(dir, '../ledger.db')).toBeNull();
  });
});
