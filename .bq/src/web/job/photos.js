// Photographs over the web: an upload becomes the hash that its field holds, and a hash is shown to those signed in.
import { Hono } from 'hono';
import { keepPhoto, readPhoto } from '../../store/photos.js';
export const photos = (web) => {
  const app = new Hono();
  app.get('/photos/:hash', async (c) => {
    const hash = c.req.param('hash');
    const bytes = await readPhoto(web.photosDir, hash);
    if (!bytes) return c.notFound();
    c.header('Cache-Control', 'private, max-age=31536000, immutable');
    c.header('ETag', `"${hash}"`);
    return c.body(new Uint8Array(bytes), 200, { 'Content-Type': 'image/webp' });
  });
  return app;
};
const UPLOAD_MAX_BYTES = 20 * 1024 * 1024;
const TOO_LARGE = 'This photograph is larger than 20 MB. Set the camera smaller and take it again.';
/** Keeps every uploaded photograph and puts its hash where the field's text would be; one that cannot be kept is told beside its field. */
export async function withPhotos(web, { posted, files }) {
  const filled = new Map(posted);
  const problems = [];
  for (const [field, file] of files) {
    const kept =
      file.size > UPLOAD_MAX_BYTES ? { say: TOO_LARGE } : await keepPhoto(web.photosDir, new Uint8Array(await file.arrayBuffer()));
    if ('hash' in kept) filled.set(field, [kept.hash]);
    else problems.push({ field, say: kept.say });
  }
  return { posted: filled, problems };
}
