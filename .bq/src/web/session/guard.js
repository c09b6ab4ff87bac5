// The gate in front of every route: headers, who asks, from where, and whether the route table lets them.
import { matchedRoutes } from 'hono/route';
import { secureHeaders } from 'hono/secure-headers';
import { thingAt } from '../../queries/things.js';
import { keepPosted } from '../form/drafts.js';
import { wantsJson } from '../form/negotiate.js';
import { localPath } from './address.js';
import { policyOf } from './context.js';
import { isOnLan, screenToken, sessionToken } from './cookies.js';
import { ROUTES } from './routes.js';
import { noSuchPage, trouble } from './trouble.js';
/** Headers: nothing from elsewhere, no inline script or style, no framing; Referrer-Policy keeps Origin on forms posted without scripts. */
export const headers = secureHeaders({
  contentSecurityPolicy: {
    defaultSrc: ["'none'"],
    scriptSrc: ["'self'"],
    styleSrc: ["'self'"],
    imgSrc: ["'self'"],
    fontSrc: ["'self'"],
    connectSrc: ["'self'"],
    formAction: ["'self'"],
    baseUri: ["'none'"],
    frameAncestors: ["'none'"],
    requireTrustedTypesFor: ["'script'"],
    trustedTypes: ['htmx'],
  },
  referrerPolicy: 'same-origin',
  strictTransportSecurity: false,
});
/** Every unsafe request must come from this site's own pages; a JSON body is no way round that. */
export function sameOrigin(web) {
  return async function sameOriginOnly(c, next) {
    if (c.req.method === 'GET' || c.req.method === 'HEAD') return next();
    const site = c.req.header('sec-fetch-site');
    const origin = c.req.header('origin');
    const fromHere = origin === web.baseUrl || (origin === undefined && site === 'same-origin');
    if (fromHere && (site === undefined || site === 'same-origin')) return next();
    return trouble(c, 403, 'This form did not come from a page of this program. Open the page again and send it from there.');
  };
}
/** This site under another name is not this site: a page elsewhere that has its name point here reads nothing. The one PC may call itself localhost. */
export function knownHost(web) {
  const { host, port } = new URL(web.baseUrl);
  const own = isOnLan(web) ? [host] : [host, `localhost:${port}`, `[::1]:${port}`];
  return async function ownNamesOnly(c, next) {
    const asked = c.req.header('host')?.toLowerCase() ?? host;
    if (asked === host) return next();
    if (own.includes(asked) && c.req.method === 'GET') return c.redirect(web.baseUrl + localPath(pathOf(c)), 303);
    return trouble(c, 421, `This program answers at ${web.baseUrl} alone. Open it there.`);
  };
}
/** Finds the session, the person and the policy, then asks the route table; what is not named there is served to nobody. */
export function gate(web) {
  return async function routeTable(c, next) {
    await web.directory.settled();
    const token = sessionToken(web, c);
    const device = await deviceOf(web, c);
    const isWatching = c.req.path.endsWith('/news') && c.req.header('hx-request') !== undefined;
    const found = token && device ? await web.access.session(token, isWatching) : null;
    const here = found && (!isOnLan(web) || found.device === device) ? found : null;
    const person = here ? await personOf(web, here.person) : null;
    const session = person ? here : null;
    c.set('device', device);
    c.set('session', session && token ? { ...session, token } : null);
    c.set('policy', await policyOf(web));
    c.set('person', person);
    c.set('drafts', session && c.req.method === 'GET' ? (await web.access.draftsOf(session.person)).length : 0);
    c.header('Cache-Control', 'no-store');
    c.header('Vary', 'HX-Request-Type, Accept');
    const allowed = ROUTES[routeKey(c)];
    if (allowed === undefined) return noSuchPage(c);
    if (allowed === 'anyone') return next();
    if (!person || session?.lockedAt != null) return isWatching ? c.body(null, 204) : signInFirst(web, c);
    if (allowed.includes(person.role)) return next();
    return trouble(c, 403, 'Your role may not open this. Ask the owner.');
  };
}
/** "GET /jobs/:job", of the handler that will answer. */
function routeKey(c) {
  const route = matchedRoutes(c).findLast(({ method }) => method !== 'ALL');
  return route ? `${c.req.method === 'HEAD' ? 'GET' : c.req.method} ${route.path}` : '';
}
/** On loopback every browser is the one PC; on the shop's network a screen that was enrolled, or null. */
async function deviceOf(web, c) {
  if (!isOnLan(web)) return 'this-pc';
  const token = screenToken(web, c);
  return token ? ((await web.access.device(token))?.id ?? null) : null;
}
async function personOf(web, id) {
  const role = (await thingAt(web.store, id, 'person'))?.role;
  if (!role || role === 'left') return null;
  return { id, name: web.directory.nameOf(id) ?? 'somebody', role: role };
}
/** The path that was asked for, with what stands after its question mark. */
function pathOf(c) {
  const { pathname, search } = new URL(c.req.url);
  return pathname + search;
}
/** To the sign-in page and back; what was posted is kept and opened again afterwards. */
async function signInFirst(web, c) {
  const kept = c.req.method === 'POST' ? await keepPosted(web, c) : null;
  if (wantsJson(c)) return c.json({ error: 'sign_in', say: 'Sign in first.' }, 401);
  const back = localPath(kept ?? (c.req.method === 'GET' ? pathOf(c) : '/'));
  const signIn = `/sign-in?back=${encodeURIComponent(back)}`;
  if (c.req.header('hx-request')) {
    c.header('HX-Redirect', signIn);
    return c.body(null, 200);
  }
  return c.redirect(signIn, 303);
}
