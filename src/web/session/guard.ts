// The gate in front of every route: headers, who asks, from where, and whether the route table lets them.

import type { MiddlewareHandler } from 'hono';
import { matchedRoutes } from 'hono/route';
import { secureHeaders } from 'hono/secure-headers';
import type { StaffRole } from '../../book/facts.ts';
import { thingAt } from '../../queries/things.ts';
import type { Ref } from '../../units/ids.ts';
import { keepPosted } from '../form/drafts.ts';
import { wantsJson } from '../form/negotiate.ts';
import { localPath } from './address.ts';
import { type Ctx, type Env, type Person, type Policy, policyOf, type Web } from './context.ts';
import { isOnLan, screenToken, sessionToken } from './cookies.ts';
import { ROUTES } from './routes.ts';
import { noSuchPage, trouble } from './trouble.ts';

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
    objectSrc: ["'none'"],
    baseUri: ["'none'"],
    frameAncestors: ["'none'"],
    requireTrustedTypesFor: ["'script'"],
    trustedTypes: ['htmx'],
  },
  referrerPolicy: 'same-origin',
  strictTransportSecurity: false,
});

/** Every unsafe request must come from this site's own pages; a JSON body is no way round that. */
export function sameOrigin(web: Web): MiddlewareHandler<Env> {
  return async function sameOriginOnly(c, next) {
    if (c.req.method === 'GET' || c.req.method === 'HEAD') return next();
    const site = c.req.header('sec-fetch-site');
    const origin = c.req.header('origin');
    const fromHere = origin === web.baseUrl || (origin === undefined && site === 'same-origin');
    if (fromHere && (site === undefined || site === 'same-origin')) return next();
    web.note({ happened: 'other_site' });
    return trouble(c, 403, 'This form did not come from a page of this program. Open the page again and send it from there.');
  };
}

/** This site under another name is not this site: a page elsewhere that has its name point here reads nothing. The one PC may call itself localhost. */
export function knownHost(web: Web): MiddlewareHandler<Env> {
  const { host, port } = new URL(web.baseUrl);
  const own = isOnLan(web) ? [host] : [host, `localhost:${port}`, `[::1]:${port}`];
  return async function ownNamesOnly(c, next) {
    const asked = c.req.header('host')?.toLowerCase() ?? host;
    if (asked === host) return next();
    if (own.includes(asked) && c.req.method === 'GET') return c.redirect(web.baseUrl + localPath(pathOf(c)), 303);
    web.note({ happened: 'other_host' });
    return trouble(c, 421, `This program answers at ${web.baseUrl} alone. Open it there.`);
  };
}

/** Finds the session, the person and the policy, then asks the route table; what is not named there is served to nobody. */
export function gate(web: Web): MiddlewareHandler<Env> {
  return async function routeTable(c, next) {
    await web.directory.settled();
    const token = sessionToken(web, c);
    const policy = await policyOf(web);
    const device = await deviceOf(web, c, policy);
    const isWatching = c.req.path.endsWith('/news') && c.req.header('hx-request') !== undefined;
    const found = token && device ? await web.access.session(token, isWatching) : null;
    const here = found && (!isOnLan(web) || found.device === device) ? found : null;
    const person = here ? await personOf(web, here.person) : null;
    const session = person ? here : null;
    c.set('device', device);
    c.set('session', session && token ? { ...session, token } : null);
    c.set('policy', policy);
    c.set('person', person);
    c.set('drafts', session && c.req.method === 'GET' ? (await web.access.draftsOf(session.person)).length : 0);
    c.header('Cache-Control', 'no-store');
    c.header('Vary', 'HX-Request-Type, Accept');
    const allowed = ROUTES[routeKey(c)];
    if (allowed === undefined) return noSuchPage(c);
    if (allowed === 'anyone') return next();
    if (!person || session?.lockedAt != null) return isWatching ? c.body(null, 204) : signInFirst(web, c);
    if (allowed.includes(person.role)) return next();
    web.note({ happened: 'role_refused', person: person.id, ...(device === null ? {} : { screen: device }), route: routeKey(c) });
    return trouble(c, 403, 'Your role may not open this. Ask the owner.');
  };
}

/** "GET /jobs/:job", of the handler that will answer. */
function routeKey(c: Ctx): string {
  const route = matchedRoutes(c).findLast(({ method }) => method !== 'ALL');
  return route ? `${c.req.method === 'HEAD' ? 'GET' : c.req.method} ${route.path}` : '';
}

/** On loopback every browser is the one PC; on the shop's network a screen that was enrolled and not withdrawn, or null. */
async function deviceOf(web: Web, c: Ctx, policy: Policy | null): Promise<string | null> {
  if (!isOnLan(web)) return 'this-pc';
  const token = screenToken(web, c);
  const id = token ? (await web.access.device(token))?.id : undefined;
  return id !== undefined && policy?.screens.has(id) ? id : null;
}

async function personOf(web: Web, id: Ref<'person'>): Promise<Person | null> {
  const role = (await thingAt(web.store, id, 'person'))?.role;
  if (!role || role === 'left') return null;
  return { id, name: web.directory.nameOf(id) ?? 'somebody', role: role satisfies StaffRole };
}

/** The path that was asked for, with what stands after its question mark. */
function pathOf(c: Ctx): string {
  const { pathname, search } = new URL(c.req.url);
  return pathname + search;
}

/** To the sign-in page and back; what was posted is kept and opened again afterwards. */
async function signInFirst(web: Web, c: Ctx) {
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
