import { Layout } from '../../../views/layout.js';
export const wantsJson = (c) => /^application\/json\b/.test(c.req.header('accept') ?? '');
const wantsFragment = (c) => c.req.header('hx-request-type') === 'partial';
/** Answers in the form that was asked for; an error status marks the title. */
export async function respond(c, { title, current, body, json, status = 200 }) {
  if (wantsJson(c)) return c.json(json, status);
  const marked = status >= 400 ? `Error: ${title}` : title;
  const person = c.get('person');
  const signedIn = person && c.get('session')?.lockedAt === null ? person : null;
  const page = Layout({
    title: marked,
    current: current ?? '',
    person: signedIn,
    shop: c.get('policy')?.name ?? null,
    drafts: c.get('drafts') ?? 0,
    fragment: wantsFragment(c),
    children: body,
  });
  return c.html(`${wantsFragment(c) ? '' : '<!doctype html>'}${await page}`, status);
}
/** A page on which a secret stands is not compressed: beside words that others choose, its length would tell what it is (BREACH). */
export const holdsSecret = (c) => c.header('Cache-Control', 'no-store, no-transform');
/** After something was written: see other, or for htmx the whole page anew. */
export function goTo(c, path) {
  if (!c.req.header('hx-request')) return c.redirect(path, 303);
  c.header('HX-Redirect', path);
  return c.body(null, 200);
}
