// The gate in front of every route: headers, who asks, from where, and whether the route table lets them.

import type { MiddlewareHandler } from 'hono';
import { matchedRoutes } from 'hono/route';
import { secureHeaders } from 'hono/secure-headers';
import type { StaffRole } from '../../book/facts.ts';
import { thingOf } from '../../store/shelf.ts';
import type { Ref } from '../../units/ids.ts';
import { keepPosted } from '../form/drafts.ts';
import { wantsJson } from '../form/negotiate.ts';
import { type Ctx, type Env, type Person, policyOf, type Web } from './context.ts';
import { isOnLan, screenToken, sessionToken } from './cookies.ts';
import { ROUTES } from './routes.ts';

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
export function sameOrigin(web: Web): MiddlewareHandler<Env> {
  return async function sameOriginOnly(c, next) {
    if (c.req.method === 'GET' || c.req.method === 'HEAD') return next();
    const site = c.req.header('sec-fetch-site');
    const origin = c.req.header('origin');
    const fromHere = origin === web.baseUrl || (origin === undefined && site === 'same-origin');
    if (fromHere && (site === undefined || site === 'same-origin')) return next();
    return c.text('This form did not come from a page of this program. Open the page again and send it from there.', 403);
  };
}

/** Finds the session, the person and the policy, then asks the route table; what is not named there is served to nobody. */
export function gate(web: Web): MiddlewareHandler<Env> {
  return async function routeTable(c, next) {
    await web.directory.settled();
    const token = sessionToken(web, c);
    const device = await deviceOf(web, c);
    const isWatching = c.req.path.endsWith('/news') && c.req.header('hx-request') !== undefined;
    const found = token && device ? await web.access.session(token, isWatching) : null;
    const session = found && (!isOnLan(web) || found.device === device) ? found : null;
    c.set('device', device);
    c.set('session', session && token ? { ...session, token } : null);
    c.set('policy', await policyOf(web));
    c.set('person', session ? await personOf(web, session.person) : null);
    c.set('drafts', session && c.req.method === 'GET' ? (await web.access.draftsOf(session.person)).length : 0);
    c.header('Cache-Control', 'no-store');
    c.header('Vary', 'HX-Request-Type, Accept');
    const allowed = ROUTES[routeKey(c)];
    if (allowed === undefined) return notThere(c);
    if (allowed === 'anyone') return next();
    const person = c.get('person');
    if (!person || session?.lockedAt != null) return isWatching ? c.body(null, 204) : signInFirst(web, c);
    if (allowed.includes(person.role)) return next();
    return c.text('Your role may not open this. Ask the owner.', 403);
  };
}

/** "GET /jobs/:job", of the handler that will answer. */
function routeKey(c: Ctx): string {
  const route = matchedRoutes(c).findLast(({ method }) => method !== 'ALL');
  return route ? `${c.req.method === 'HEAD' ? 'GET' : c.req.method} ${route.path}` : '';
}

/** On loopback every browser is the one PC; on the shop's network a screen that was enrolled, or null. */
async function deviceOf(web: Web, c: Ctx): Promise<string | null> {
  if (!isOnLan(web)) return 'this-pc';
  const token = screenToken(web, c);
  return token ? ((await web.access.device(token))?.id ?? null) : null;
}

async function personOf(web: Web, id: Ref<'person'>): Promise<Person | null> {
  const [row] = await web.store.read("SELECT state FROM thing WHERE id = ? AND kind = 'person'", [id]);
  const role = row && thingOf(row).role;
  if (!role || role === 'left') return null;
  return { id, name: web.directory.nameOf(id) ?? 'somebody', role: role satisfies StaffRole };
}

function notThere(c: Ctx) {
  return c.text('There is no such page. Go back, or start from the Counter.', 404);
}

/** To the sign-in page and back; what was posted is kept and opened again afterwards. */
async function signInFirst(web: Web, c: Ctx) {
  const kept = c.req.method === 'POST' ? await keepPosted(web, c) : null;
  if (wantsJson(c)) return c.json({ error: 'sign_in', say: 'Sign in first.' }, 401);
  const url = new URL(c.req.url);
  const back = kept ?? (c.req.method === 'GET' ? url.pathname + url.search : '/');
  const signIn = `/sign-in?back=${encodeURIComponent(back)}`;
  if (c.req.header('hx-request')) {
    c.header('HX-Redirect', signIn);
    return c.body(null, 200);
  }
  return c.redirect(signIn, 303);
}
