// The program asked over HTTP as a browser without scripts would: its first run, sign-in, a form filled in and posted.
import type { Program } from './program.ts';
import { inputsOf } from './web/site.ts';

const PIN = '4417';

/** Posts a form as the site's own page would. */
export async function post(url: string, path: string, fields: Readonly<Record<string, string | string[]>>, cookie = ''): Promise<Response> {
  const body = new URLSearchParams(
    Object.entries(fields).flatMap(([name, values]) => [values].flat().map((value): [string, string] => [name, value])),
  );
  return fetch(url + path, { method: 'POST', body, redirect: 'manual', headers: { origin: url, 'sec-fetch-site': 'same-origin', cookie } });
}
const cookieOf = (answer: Response) => (answer.headers.get('set-cookie') ?? '').split(';')[0] ?? '';

/** Begins the shop by the link that the program said. */
export async function firstRun({ url, said }: Pick<Program, 'url' | 'said'>): Promise<void> {
  const key = /key=(\S+)/.exec(said())?.[1] ?? '';
  const shop = { shopName: 'Wren', ownerName: 'Ada', pin: PIN, password: 'four words will do', country: 'GB', currency: 'GBP' };
  const rest = { zone: 'Europe/London', staffing: 'alone', balanceName: 'Bench', largest: '400', step: '0.01', key };
  const answer = await post(url, '/first-run', { ...shop, ...rest });
  if (answer.headers.get('location') !== '/setup/recovery-sheet') throw new Error(`the first run answered ${answer.status}`);
}

/** Signs the owner in; answers the cookie of the session. */
export async function signIn(url: string): Promise<string> {
  const html = await (await fetch(`${url}/sign-in`)).text();
  const person = /name="person" value="([^"]+)"/.exec(html)?.[1] ?? '';
  return cookieOf(await post(url, '/sign-in', { person, pin: PIN, back: '/' }));
}

/** A form that names a place, filled in; sent again under the same key it must be answered the same. */
export async function placeForm(url: string, cookie: string, name: string): Promise<Record<string, string | string[]>> {
  const html = await (await fetch(`${url}/write/place_named`, { headers: { cookie } })).text();
  return { ...inputsOf(html), name, kind: 'tray' };
}
