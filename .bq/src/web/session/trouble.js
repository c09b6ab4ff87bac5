import { Trouble } from '../../../views/trouble.js';
import { respond } from '../form/negotiate.js';

const TITLES = {
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
export function trouble(c, status, say) {
  const home = c.get('person') ? ['/', 'To the Counter'] : ['/sign-in', 'Sign in'];
  c.header('Cache-Control', 'no-store');
  return respond(c, {
    title: TITLES[status] ?? 'This was not done',
    status,
    json: { error: status, say },
    body: Trouble({ title: TITLES[status] ?? 'This was not done', say, ways: [home] }),
  });
}
/** Of an address that leads nowhere. */
export const noSuchPage = (c) =>
  trouble(
    c,
    404,
    'The address leads nowhere here: it was mistyped, or what it named is not in this ledger. Go back, or start from the Counter.',
  );
