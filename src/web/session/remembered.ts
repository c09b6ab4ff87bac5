// What was answered is remembered by the browser it was answered to: it keeps the newest signed checkpoint it was given and sends it back
// with whatever it asks next. A ledger that was put back from an older copy hears so from the first screen that knows more.
import type { MiddlewareHandler } from 'hono';
import { base64url, bytesOfBase64url } from '../../log/bytes.ts';
import { parseDecimal } from '../../log/merkle.ts';
import type { Kept } from '../../store/outside.ts';
import type { Env, Web } from './context.ts';
import { keepSeen, seenCheckpoint } from './cookies.ts';

/** Stands behind the gate: only screens that are let in are heard, and only people who are signed in are given a checkpoint. */
export function remembered(web: Web): MiddlewareHandler<Env> {
  return async function hearAndTell(c, next) {
    const device = c.get('device');
    const kept = readSeen(seenCheckpoint(web, c) ?? '');
    if (kept && device !== null) await web.store.hear(kept, device === 'this-pc' ? 'a browser of this PC' : `the screen ${device}`);
    await next();
    const head = web.store.head();
    const isNewer = head !== null && (kept === null || kept.size < head.size);
    if (isNewer && c.get('person') && c.res.headers.get('cache-control') === 'no-store') keepSeen(web, c, formatSeen(head));
  };
}

const formatSeen = ({ size, root, signature }: Kept): string => `${size}.${base64url(root)}.${base64url(signature)}`;

function readSeen(text: string): Kept | null {
  const [decimal = '', rootText = '', signatureText = '', ...more] = text.split('.');
  const [size, root, signature] = [parseDecimal(decimal), bytesOfBase64url(rootText), bytesOfBase64url(signatureText)];
  if (more.length > 0 || typeof size !== 'number' || size === 0 || root?.length !== 32 || signature?.length !== 64) return null;
  return { size, root, signature };
}
