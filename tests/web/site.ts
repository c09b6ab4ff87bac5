// The web part over a real shop, asked through `app.request`: people with PINs, sessions, forms filled in by name.
import { join } from 'node:path';
import { createApp } from '../../src/app.ts';
import type { StaffRole } from '../../src/book/facts.ts';
import { openAccess } from '../../src/store/access.ts';
import { openDirectory } from '../../src/store/names.ts';
import type { Ref } from '../../src/units/ids.ts';
import type { App, Web } from '../../src/web/session/context.ts';
import type { Noted } from '../../src/web/session/noted.ts';
import { line, openShop, type Shop } from '../shop.ts';

export const BASE = 'http://127.0.0.1:8417';
export const PIN = '4417';
export const PASSWORD = 'four words will do';
const SAME = { 'sec-fetch-site': 'same-origin', origin: BASE };

export interface Visitor {
  get(path: string, headers?: Readonly<Record<string, string>>): Promise<Response>;
  post(path: string, fields: Fields, headers?: Readonly<Record<string, string>>): Promise<Response>;
  postJson(path: string, body: object): Promise<Response>;
  /** A form as its page gives it: hidden and prefilled inputs, ready to be filled in and posted. */
  form(path: string): Promise<Record<string, string | string[]>>;
  json(path: string): Promise<Record<string, unknown>>;
}
export type Fields = Readonly<Record<string, string | readonly string[]>>;
export interface Site {
  readonly shop: Shop;
  readonly web: Web;
  readonly app: App;
  readonly nobody: Visitor;
  /** Somebody of that role, signed in. */
  as(role: StaffRole): Promise<Visitor>;
  /** Who they are. */
  readonly people: ReadonlyMap<StaffRole, Ref<'person'>>;
  readonly bugs: unknown[];
  /** What the program's log was told. */
  readonly noted: Noted[];
  close(): Promise<void>;
}

/** Opens a started shop behind the web part. */
export async function openSite(deps: Parameters<typeof openShop>[0] = {}, elapsed?: () => number): Promise<Site> {
  const shop = await openShop(deps);
  const { store, clock, random } = shop;
  const access = openAccess(store.access, store.pepper, () => clock.now, random, elapsed ?? (() => clock.now));
  const directory = await openDirectory(store);
  const assetsDir = join(import.meta.dirname, '..', '..', 'views', 'assets');
  const noted: Noted[] = [];
  const web: Web = {
    store,
    access,
    directory,
    clock: () => clock.now,
    random,
    baseUrl: BASE,
    assetsDir,
    photosDir: join(shop.dir, 'photos'),
    note: (one) => noted.push(one),
  };
  const bugs: unknown[] = [];
  const app = createApp(web, (error) => bugs.push(error));
  const people = new Map<StaffRole, Ref<'person'>>([['owner', shop.owner]]);
  for (const role of ['bench', 'counter', 'auditor'] as const) {
    const person = shop.newRef('person');
    await shop.write(line('person_joined', { person, role, name: `A ${role}` }));
    people.set(role, person);
  }
  const as = async (role: StaffRole): Promise<Visitor> => {
    const person = people.get(role) as Ref<'person'>;
    if (!(await access.hasCredential(person, 'password'))) {
      await access.setCredential(person, 'pin', PIN);
      await access.setCredential(person, 'password', PASSWORD);
    }
    return visitor(app, `lemel=${await access.beginSession(person, 'this-pc')}`);
  };
  return { shop, web, app, nobody: visitor(app, ''), as, people, bugs, noted, close: () => shop.close() };
}

function visitor(app: App, cookie: string): Visitor {
  const get = (path: string, headers = {}) => Promise.resolve(app.request(path, { headers: { cookie, ...headers } }));
  return {
    get,
    post: async (path, fields, headers = {}) => {
      const body = new FormData();
      for (const [name, values] of Object.entries(fields)) for (const value of [values].flat()) body.append(name, value);
      return app.request(path, { method: 'POST', body, headers: { cookie, ...SAME, ...headers } });
    },
    postJson: async (path, body) => {
      const json = { accept: 'application/json', 'content-type': 'application/json' };
      return app.request(path, { method: 'POST', body: JSON.stringify(body), headers: { cookie, ...SAME, ...json } });
    },
    form: async (path) => inputsOf(await (await get(path)).text()),
    json: async (path) => (await (await get(path, { accept: 'application/json' })).json()) as Record<string, unknown>,
  };
}

/** What a browser without scripts would post of the first form in <main>, untouched. */
export function inputsOf(html: string): Record<string, string | string[]> {
  const main = html.slice(html.indexOf('<main'));
  const form = main.slice(main.indexOf('<form'), main.indexOf('</form>'));
  const fields: Record<string, string | string[]> = {};
  for (const [tag] of form.matchAll(/<input[^>]*>/g)) {
    const attribute = (name: string) => new RegExp(`\\s${name}="([^"]*)"`).exec(tag)?.[1];
    const name = attribute('name');
    const isBox = /type="(radio|checkbox)"/.test(tag);
    if (name && (!isBox || /\schecked/.test(tag)) && !/type="file"/.test(tag)) fields[name] = decode(attribute('value') ?? '');
  }
  for (const [, name, text] of form.matchAll(/<textarea[^>]*name="([^"]*)"[^>]*>([\s\S]*?)<\/textarea>/g))
    fields[name ?? ''] = decode(text ?? '');
  for (const [, name, inner] of form.matchAll(/<select[^>]*name="([^"]*)"[^>]*>([\s\S]*?)<\/select>/g)) {
    fields[name ?? ''] = decode(/<option value="([^"]*)"[^>]*selected/.exec(inner ?? '')?.[1] ?? '');
  }
  return fields;
}

const decode = (text: string) =>
  text.replaceAll('&quot;', '"').replaceAll('&#39;', "'").replaceAll('&lt;', '<').replaceAll('&gt;', '>').replaceAll('&amp;', '&');
