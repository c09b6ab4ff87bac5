// The two cookies, of a session and of a screen: on the shop's network one that was enrolled, on the one PC a browser that is known again, which
// opens nothing. On the network they are bound to this host and to https by their names.
import { deleteCookie, getCookie, setCookie } from 'hono/cookie';
/** Whether screens of the shop reach the program over its network, and not one PC alone. */
export const isOnLan = ({ baseUrl }) => baseUrl.startsWith('https:');
const SESSION = 'lemel';
const SCREEN = 'lemel-screen';
/** Browsers keep a cookie 400 days at most; each visit renews it. */
const LONG_S = 400 * 86_400;
const options = (web) => {
  const shared = { path: '/', httpOnly: true, sameSite: 'Strict' };
  return isOnLan(web) ? { ...shared, secure: true, prefix: 'host' } : shared;
};
const read = (web, c, name) => (isOnLan(web) ? getCookie(c, name, 'host') : getCookie(c, name));
export const sessionToken = (web, c) => read(web, c, SESSION);
export const screenToken = (web, c) => read(web, c, SCREEN);
export const keepSession = (web, c, token) => setCookie(c, SESSION, token, options(web));
export const keepScreen = (web, c, token) => setCookie(c, SCREEN, token, { ...options(web), maxAge: LONG_S });
export const dropSession = (web, c) => {
  deleteCookie(c, SESSION, options(web));
};
