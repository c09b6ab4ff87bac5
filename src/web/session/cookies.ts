// The cookies, of a session, of the newest checkpoint this browser was given, and of a screen: on the shop's network one that was enrolled, on the one PC a browser that is known again, which
// opens nothing. On the network they are bound to this host and to https by their names.
import { deleteCookie, getCookie, setCookie } from 'hono/cookie';
import type { Ctx, Web } from './context.ts';

/** Whether screens of the shop reach the program over its network, and not one PC alone. */
export const isOnLan = ({ baseUrl }: Pick<Web, 'baseUrl'>): boolean => baseUrl.startsWith('https:');

const SESSION = 'lemel';
const SCREEN = 'lemel-screen';
const SEEN = 'lemel-seen';
/** Browsers keep a cookie 400 days at most; each visit renews it. */
const LONG_S = 400 * 86_400;

const options = (web: Web) => {
  const shared = { path: '/', httpOnly: true, sameSite: 'Strict' } as const;
  return isOnLan(web) ? ({ ...shared, secure: true, prefix: 'host' } as const) : shared;
};
const read = (web: Web, c: Ctx, name: string) => (isOnLan(web) ? getCookie(c, name, 'host') : getCookie(c, name));

export const sessionToken = (web: Web, c: Ctx): string | undefined => read(web, c, SESSION);
export const screenToken = (web: Web, c: Ctx): string | undefined => read(web, c, SCREEN);
export const seenCheckpoint = (web: Web, c: Ctx): string | undefined => read(web, c, SEEN);
export const keepSession = (web: Web, c: Ctx, token: string): void => setCookie(c, SESSION, token, options(web));
export const keepScreen = (web: Web, c: Ctx, token: string): void => setCookie(c, SCREEN, token, { ...options(web), maxAge: LONG_S });
export const keepSeen = (web: Web, c: Ctx, seen: string): void => setCookie(c, SEEN, seen, { ...options(web), maxAge: LONG_S });
export const dropSession = (web: Web, c: Ctx): void => {
  deleteCookie(c, SESSION, options(web));
};
