// Photographs over the web: an upload becomes the hash that its field holds, and a hash is shown to those signed in.
import { Hono } from 'hono';
import type { Posted, Problem } from '../../book/codec.ts';
import type { Control } from '../../book/values.ts';
import { keepPhoto, readPhoto } from '../../store/photos.ts';
import type { Received } from '../form/posted.ts';
import type { Fieldset } from '../form/write.ts';
import type { Env, Resource, Web } from '../session/context.ts';

export const photos: Resource = (web) => {
  const app = new Hono<Env>();
  app.get('/photos/:hash', async (c) => {
    const hash = c.req.param('hash');
    const bytes = await readPhoto(web.photosDir, hash);
    if (!bytes) return c.notFound();
    // Asked for anew each time, so that a browser whose session has ended shows none of them.
    c.header('Cache-Control', 'private, no-cache');
    c.header('ETag', `"${hash}"`);
    if (c.req.header('if-none-match') === `"${hash}"`) return c.body(null, 304);
    return c.body(new Uint8Array(bytes), 200, { 'Content-Type': 'image/webp' });
  });
  return app;
};

const UPLOAD_MAX_BYTES = 20 * 1024 * 1024;
const TOO_LARGE = 'This photograph is larger than 20 MB. Set the camera smaller and take it again.';

export interface WithPhotos {
  readonly posted: Posted;
  readonly problems: readonly Problem[];
}

/** Keeps every uploaded photograph and puts its hash where the field's text would be; one that cannot be kept is told beside its field. */
export async function withPhotos(web: Web, { posted, files }: Received): Promise<WithPhotos> {
  const filled = new Map(posted);
  const problems: Problem[] = [];
  for (const [field, file] of files) {
    const kept =
      file.size > UPLOAD_MAX_BYTES ? { say: TOO_LARGE } : await keepPhoto(web.photosDir, new Uint8Array(await file.arrayBuffer()));
    if ('hash' in kept) filled.set(field, [kept.hash]);
    else problems.push({ field, say: kept.say });
  }
  return { posted: filled, problems };
}

/** Photographs that are named and are not here, each beside its field: an entry never says that something was photographed which nobody can look at. */
export async function photosNotHere(web: Web, fields: Fieldset, data: Readonly<Record<string, unknown>>): Promise<readonly Problem[]> {
  const named = Object.entries(fields).flatMap(([name, { control }]) => photosIn(control, data[name], name));
  const here = await Promise.all(named.map(([, hash]) => readPhoto(web.photosDir, hash)));
  return named.flatMap(([field], n) =>
    here[n] ? [] : [{ field, say: 'This photograph is not here. Take it again, or choose its file.' }],
  );
}

/** The hashes in a value, each with the name of its field, however deep its control puts them. */
function photosIn(control: Control, value: unknown, at: string): readonly (readonly [field: string, hash: string])[] {
  if (value === undefined) return [];
  if (control.kind === 'file') return [[at, String(value)]];
  if (control.kind === 'list' && Array.isArray(value)) return value.flatMap((one, n) => photosIn(control.of, one, `${at}.${n}`));
  if (control.kind !== 'group') return [];
  const said = new Map(Object.entries(Object(value)));
  return Object.entries(control.members).flatMap(([name, member]) => photosIn(member.control, said.get(name), `${at}.${name}`));
}
