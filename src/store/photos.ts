// Photographs: what a camera made becomes one small picture without its metadata, kept under the SHA-256 of its bytes.
// The file is on the disk before an entry names it; it can be deleted, the hash in the leaf stays.
import { existsSync, mkdirSync, readdirSync, rmSync } from 'node:fs';
import { type FileHandle, open, readFile, rename, rm } from 'node:fs/promises';
import { join } from 'node:path';
import sharp from 'sharp';
import { hex } from '../log/bytes.ts';
import { StorageFault } from './connection.ts';
import { sha256 } from './crypto.ts';

export type PhotoTrouble = 'not an image' | 'too many pixels' | 'phone format';
export type PhotoKept = { readonly hash: string } | { readonly trouble: PhotoTrouble; readonly say: string };

const SIDE_PX = 2048;
const PIXELS_MAX = 60_000_000;
const QUALITY = 82;
const SAYS: Readonly<Record<PhotoTrouble, string>> = {
  'not an image': 'This is not a photograph that can be read. Take it again, or choose a JPEG or PNG.',
  'too many pixels': 'This photograph has more than 60 million pixels. Set the camera smaller and take it again.',
  'phone format': 'This photograph is HEIC, which cannot be read here. Set the phone’s camera to “most compatible”, or send a JPEG.',
};
const PHONE_BRANDS = ['heic', 'heix', 'heim', 'heis', 'hevc', 'hevx', 'mif1', 'msf1'];

// Nothing but pictures from cameras: no SVG, PDF or anything else that the library could open.
sharp.block({ operation: ['VipsForeignLoad'] });
sharp.unblock({ operation: ['VipsForeignLoadJpeg', 'VipsForeignLoadPng', 'VipsForeignLoadWebp'] });

/** Keeps a photograph from the bytes of an upload: upright, at most 2048 px a side, WebP, no metadata. A picture that was kept before is not kept twice. */
export async function keepPhoto(dir: string, upload: Uint8Array): Promise<PhotoKept> {
  const picture = await pictureOf(upload);
  if ('trouble' in picture) return picture;
  const hash = hex(sha256(picture.bytes));
  const path = join(dir, `${hash}.webp`);
  if (!(await readPhoto(dir, hash))) await writeDurably(dir, path, picture.bytes);
  return { hash };
}

/** Takes away what a crash left half written. Nobody may be keeping a photograph meanwhile. */
export function sweepPhotos(dir: string): void {
  if (!existsSync(dir)) return;
  for (const name of readdirSync(dir)) if (/^[0-9a-f]{64}\.webp\.\d+$/.test(name)) rmSync(join(dir, name));
}

/** The bytes of a kept photograph (WebP), or null where it was deleted, never was, or is another: nobody is shown a picture that was not taken of it. */
export async function readPhoto(dir: string, hash: string): Promise<Uint8Array | null> {
  const bytes = /^[0-9a-f]{64}$/.test(hash) ? await readFile(join(dir, `${hash}.webp`)).catch(() => null) : null;
  return bytes && hex(sha256(bytes)) === hash ? bytes : null;
}

type Picture = { readonly bytes: Uint8Array } | { readonly trouble: PhotoTrouble; readonly say: string };

async function pictureOf(upload: Uint8Array): Promise<Picture> {
  const trouble = (trouble: PhotoTrouble) => ({ trouble, say: SAYS[trouble] });
  try {
    const image = sharp(upload, { limitInputPixels: PIXELS_MAX, failOn: 'error' });
    const { width, height } = await image.metadata();
    if (width * height > PIXELS_MAX) return trouble('too many pixels');
    const small = image.autoOrient().resize(SIDE_PX, SIDE_PX, { fit: 'inside', withoutEnlargement: true });
    return { bytes: await small.webp({ quality: QUALITY }).toBuffer() };
  } catch (error) {
    if (/pixel limit/.test(String(error))) return trouble('too many pixels');
    return trouble(isFromPhone(upload) ? 'phone format' : 'not an image');
  }
}

/** ISO base media file format (ISO/IEC 14496-12, 4.3): "ftyp" after four bytes of length, then the brand; HEIF brands of ISO/IEC 23008-12, annex B. */
const isFromPhone = (bytes: Uint8Array): boolean => ascii(bytes, 4) === 'ftyp' && PHONE_BRANDS.includes(ascii(bytes, 8));
const ascii = (bytes: Uint8Array, at: number): string => String.fromCharCode(...bytes.subarray(at, at + 4));

/** Whole and on the disk under its name, or not there: written aside, synced, renamed, and the folder synced. */
async function writeDurably(dir: string, path: string, bytes: Uint8Array): Promise<void> {
  mkdirSync(dir, { recursive: true, mode: 0o700 });
  const aside = `${path}.${process.hrtime.bigint()}`;
  try {
    await synced(await open(aside, 'wx', 0o600), (file) => file.writeFile(bytes));
    await rename(aside, path);
    await synced(await open(dir), async () => undefined);
  } catch (error) {
    await rm(aside, { force: true }).catch(() => undefined);
    throw new StorageFault(FAULTS[String((error as NodeJS.ErrnoException).code)] ?? 'SQLITE_IOERR');
  }
}

/** The system's words in those of the store, so that a photograph that finds no room is answered like an entry that finds none. */
const FAULTS: Readonly<Record<string, string>> = {
  ENOSPC: 'SQLITE_FULL',
  EDQUOT: 'SQLITE_FULL',
  EFBIG: 'SQLITE_FULL',
  EROFS: 'SQLITE_READONLY',
  EACCES: 'SQLITE_READONLY',
};

async function synced(file: FileHandle, work: (file: FileHandle) => Promise<void>): Promise<void> {
  try {
    await work(file);
    await file.sync();
  } finally {
    await file.close();
  }
}
