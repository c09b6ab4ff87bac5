// One route, three answers: a page, a fragment of it for htmx, or JSON.
import type { Child } from 'hono/jsx';
import type { ContentfulStatusCode } from 'hono/utils/http-status';
import { Layout } from '../../../views/layout.tsx';
import type { Ctx } from '../session/context.ts';

export const wantsJson = (c: Ctx): boolean => /^application\/json\b/.test(c.req.header('accept') ?? '');
const wantsFragment = (c: Ctx): boolean => c.req.header('hx-request-type') === 'partial';

export interface Page {
  readonly title: string;
  readonly current?: string;
  readonly body: Child;
  readonly json: unknown;
  readonly status?: ContentfulStatusCode;
}

/** Answers in the form that was asked for; an error status marks the title. */
export async function respond(c: Ctx, { title, current, body, json, status = 200 }: Page): Promise<Response> {
  if (wantsJson(c)) return c.json(json as object, status);
  const marked = status >= 400 ? `Error: ${title}` : title;
  const person = c.get('person');
  const signedIn = person && c.get('session')?.lockedAt === null ? person : null;
  const page = Layout({
    title: marked,
    current: current ?? '',
    person: signedIn,
    shop: c.get('policy')?.name ?? null,
    drafts: c.get('drafts') ?? 0,
    standing: (await c.get('standing')?.()) ?? [],
    fragment: wantsFragment(c),
    children: body,
  });
  return c.html(`${wantsFragment(c) ? '' : '<!doctype html>'}${await page}`, status);
}

/** A page on which a secret stands is not compressed: beside words that others choose, its length would tell what it is (BREACH). */
export const holdsSecret = (c: Ctx): void => c.header('Cache-Control', 'no-store, no-transform');

/** After something was written: see other, or for htmx the whole page anew. */
export function goTo(c: Ctx, path: string): Response {
  if (!c.req.header('hx-request')) return c.redirect(path, 303);
  c.header('HX-Redirect', path);
  return c.body(null, 200);
}
