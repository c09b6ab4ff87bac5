// A PIN guessed over HTTP at the running program, many times at once, and from another browser than its owner's.
import { mkdtempSync, rmSync } from 'node:fs';
import { Agent, request } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Program, serving } from '../program.ts';

const PIN = '4417';
let dir: string;
let program: Program;
let owner: string;
beforeAll(async () => {
  dir = mkdtempSync(join(tmpdir(), 'lemel-pin-'));
  program = await serving({ dir });
  const key = /key=(\S+)/.exec(program.said())?.[1] ?? '';
  const shop = { shopName: 'Wren', ownerName: 'Ada', pin: PIN, password: 'four words will do', country: 'GB', currency: 'GBP' };
  const rest = { zone: 'Europe/London', staffing: 'alone', balanceName: 'Bench', largest: '400', step: '0.01', key };
  expect((await post('/first-run', { ...shop, ...rest })).status).toBe(303);
  owner = /name="person" value="([^"]+)"/.exec(await (await fetch(`${program.url}/sign-in`)).text())?.[1] ?? '';
});
afterAll(async () => {
  agent.destroy();
  program.child.kill('SIGTERM');
  await program.ended;
  rmSync(dir, { recursive: true });
});

/** Many requests at once, over as many connections as a browser farm would open and a listening socket takes. */
const agent = new Agent({ keepAlive: true, maxSockets: 256 });
interface Answered {
  readonly status: number | undefined;
  readonly cookies: readonly string[];
  readonly text: string;
}
const post = (path: string, fields: Readonly<Record<string, string>>, cookie = '') =>
  new Promise<Answered>((resolve, reject) => {
    const headers = { origin: program.url, 'content-type': 'application/x-www-form-urlencoded', accept: 'application/json', cookie };
    request(program.url + path, { method: 'POST', agent, headers }, async (answer) => {
      let text = '';
      for await (const chunk of answer) text += String(chunk);
      resolve({ status: answer.statusCode, cookies: answer.headers['set-cookie'] ?? [], text });
    })
      .on('error', reject)
      .end(new URLSearchParams(fields).toString());
  });
const signIn = (pin: string, cookie = '') => post('/sign-in', { person: owner, pin, back: '/' }, cookie);
const cookiesOf = ({ cookies }: Answered) => cookies.map((cookie) => cookie.split(';')[0]).join('; ');

/** Three free tries, and one more for each wait that has passed: 30 s, then twice as long each time. */
function triesWithin(ms: number): number {
  let tries = 3;
  for (let waitMs = 30_000, atMs = waitMs; atMs <= ms; waitMs *= 2, atMs += waitMs) tries++;
  return tries;
}

describe('2,000 guesses at once', () => {
  it('are verified no more often than the free tries and the waits that passed allow, and stop nobody who is right at her own screen', {
    timeout: 120_000,
  }, async () => {
    const hers = cookiesOf(await signIn(PIN));
    const began = performance.now();
    const said = await Promise.all(Array.from({ length: 2000 }, (_, n) => signIn(String(5000 + n))));
    const tried = said.filter(({ text }) => !text.includes('was not tried'));
    expect(tried.length).toBeGreaterThanOrEqual(3);
    expect(tried.length).toBeLessThanOrEqual(triesWithin(performance.now() - began));
    expect(tried.every(({ text }) => text.includes('That is not your PIN'))).toBe(true);
    expect((await signIn(PIN, hers)).status).toBe(303);
  });
});
