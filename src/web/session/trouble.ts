// What is not served is answered like everything else: a page with a sentence and a way on, or JSON for whoever asked for JSON.
import type { ContentfulStatusCode } from 'hono/utils/http-status';
import { Trouble } from '../../../views/trouble.tsx';
import { respond } from '../form/negotiate.ts';
import type { Ctx } from './context.ts';

const TITLES: Readonly<Record<number, string>> = {
  400: 'This could not be read',
  403: 'This is not open to you',
  404: 'There is no such page',
  413: 'This is too much at once',
  415: 'This is no form',
  421: 'This is not the address',
  500: 'Something is wrong in the program',
  503: 'Not written',
};

/** Answers with a status and a sentence that says what to do. */
export function trouble(c: Ctx, status: ContentfulStatusCode, say: string): Promise<Response> {
  const home = c.get('person') ? (['/', 'To the Counter'] as const) : (['/sign-in', 'Sign in'] as const);
  c.header('Cache-Control', 'no-store');
  return respond(c, {
    title: TITLES[status] ?? 'This was not done',
    status,
    json: { error: status, say },
    body: Trouble({ title: TITLES[status] ?? 'This was not done', say, ways: [home] }),
  });
}

/** Of an address that leads nowhere. */
export const noSuchPage = (c: Ctx): Promise<Response> =>
  trouble(
    c,
    404,
    'The address leads nowhere here: it was mistyped, or what it named is not in this ledger. Go back, or start from the Counter.',
  );
