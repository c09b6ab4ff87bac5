// The program as a process of its own over a shop: start, memory, and every page, asked over HTTP.
import { spawn } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { createClient } from '@libsql/client';
import { clock, ROOT, random } from '../../src/machine.ts';
import { openAccess } from '../../src/store/access.ts';
import { openStore } from '../../src/store/open.ts';
import type { Ref } from '../../src/units/ids.ts';
import { freePort } from '../program.ts';
import { timed } from './append.ts';
import type { BenchShop } from './shop.ts';

export interface Served {
  /** Seconds from starting the process to its first answer. */
  readonly startS: number;
  /** One page, read to its end; answers milliseconds, and throws unless it was served. */
  ask(path: string): Promise<number>;
  /** Seconds until every finished job is reckoned, as it is after a start. */
  settled(): Promise<number>;
  /** Resident memory now, in MB of 10^6 bytes. */
  memoryMb(): number;
  stop(): Promise<void>;
}

/** Starts the built program over the shop, with its owner signed in. */
export async function serve({ dir, owner }: BenchShop): Promise<Served> {
  const store = await openStore({ dir, sqlDir: join(ROOT, 'drizzle'), clock, random });
  const access = openAccess(store.access, store.pepper, clock, random);
  const cookie = `lemel=${await access.beginSession(owner as Ref<'person'>, 'this-pc')}`;
  await store.close();
  const port = await freePort();
  const url = `http://127.0.0.1:${port}`;
  const env = { PATH: process.env.PATH ?? '', LEMEL_DATA: dir, LEMEL_PORT: String(port) };
  const began = performance.now();
  const child = spawn(process.execPath, [join(ROOT, '.build-bench', 'src', 'server.js')], { env, stdio: ['ignore', 'ignore', 'inherit'] });
  const ended = new Promise((resolve) => child.once('close', resolve));
  const isUp = () =>
    fetch(`${url}/healthz`).then(
      ({ ok }) => ok,
      () => false,
    );
  while (!(await isUp())) {
    if (child.exitCode !== null) throw new Error('the program ended before it served');
    await new Promise((resolve) => setTimeout(resolve, 10));
  }
  return {
    startS: (performance.now() - began) / 1000,
    ask: (path) =>
      timed(async () => {
        const answer = await fetch(url + path, { headers: { cookie }, redirect: 'manual' });
        await answer.arrayBuffer();
        if (answer.status !== 200) throw new Error(`${path} answered ${answer.status}`);
      }),
    async settled() {
      const since = performance.now();
      const due = async () => {
        const answer = await fetch(`${url}/loss`, { headers: { cookie, accept: 'application/json' } });
        return ((await answer.json()) as { readonly due: number }).due;
      };
      while ((await due()) > 0) await new Promise((resolve) => setTimeout(resolve, 250));
      return (performance.now() - since) / 1000;
    },
    memoryMb: () => (Number(/VmRSS:\s+(\d+)/.exec(readFileSync(`/proc/${child.pid}/status`, 'utf8'))?.[1]) * 1024) / 1e6,
    async stop() {
      child.kill('SIGTERM');
      await ended;
    },
  };
}

/** Addresses of every kind of page; of those with a job, forty of each, spread over the whole ledger. */
export async function pagesOf({ dir, balance }: BenchShop): Promise<Readonly<Record<string, readonly string[]>>> {
  const db = createClient({ url: `file:${join(dir, 'ledger.db')}` });
  const jobs = async (status: string) => {
    const { rows } = await db.execute({
      sql: "SELECT id FROM thing WHERE kind = 'job' AND state ->> '$.status' = ? ORDER BY n",
      args: [status],
    });
    const step = Math.max(1, Math.floor(rows.length / 40));
    return rows
      .filter((_, index) => index % step === 0)
      .slice(0, 40)
      .map(({ id }) => String(id));
  };
  const [closed, open] = [await jobs('closed'), await jobs('agreed')];
  const { rows } = await db.execute('SELECT MAX(seq) AS last FROM entry');
  db.close();
  const last = Number(rows[0]?.last);
  const of = (ids: readonly string[], tail: string) => ids.map((id) => `/jobs/${id}${tail}`);
  return {
    Counter: ['/'],
    Bench: ['/bench'],
    Safe: ['/safe'],
    'Short ticket': ['/ticket'],
    'A job': of(closed, ''),
    'A job in hand': of(open, ''),
    'Its reckoning': of(closed, '/reckoning'),
    'Its stones': of(closed, '/stones'),
    'Its letter': of(closed, '/letter'),
    'A weighing form': of(open, '/write/piece_weighed'),
    'Finish sheet': of(open, '/finish'),
    'A note without a job': ['/write/note_added'],
    'One entry': Array.from({ length: 40 }, (_, n) => `/entries/${Math.floor((last * n) / 40)}`),
    'Find a name': ['/find?q=Frost', '/find?q=Marsh', '/find?q=Oakes7'],
    'Find nothing': ['/find?q=Zzyzx'],
    Trail: ['/trail', `/trail?before=${Math.floor(last / 2)}`, '/trail?type=piece_weighed', '/trail?type=policy_set'],
    'For the owner': ['/owner'],
    'Weights of a period': ['/owner/weights'],
    Loss: ['/loss'],
    'Metal through the shop': ['/flow'],
    'A balance': [`/balances/${balance}`],
    Setup: ['/setup'],
  };
}
