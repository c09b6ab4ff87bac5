// A store on a bad day: busy files, commits that are lost or only seem so, crashes before and after them, restarts, restored copies, double taps, second tabs, clocks that jump.
import { cpSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createApp } from '../../src/app.ts';
import type { Answer, Command, Line } from '../../src/ledger/leaf.ts';
import { entryType } from '../../src/ledger/registry.ts';
import { openAccess } from '../../src/store/access.ts';
import type { Connect, Connection } from '../../src/store/connection.ts';
import { openDirectory } from '../../src/store/names.ts';
import { openStore, type Store } from '../../src/store/open.ts';
import { type Instant, instant } from '../../src/units/dates.ts';
import type { Ref } from '../../src/units/ids.ts';
import type { App } from '../../src/web/session/context.ts';
import { SQL_DIR, seededBytes } from '../shop.ts';
import { faulty } from '../store/faulty.ts';
import type { Chance } from './world.ts';

export interface BadDay {
  readonly store: Store;
  /** A page's own figures, as the owner asks for them. */
  json(path: string): Promise<unknown>;
  /** Sends a command, whatever befalls it; answers once it is known what became of it. Throws where an answer contradicts another. */
  send(lines: readonly Line[]): Promise<Answer>;
  /** Every answer that said "written", by command. */
  readonly acknowledged: ReadonlyMap<string, Extract<Answer, { answer: 'written' }>>;
  readonly happened: Map<string, number>;
  close(): Promise<void>;
}
type Crash = 'before the commit' | 'after the commit';

/** Dies at a commit when told to, and then answers nothing any more until it is opened again. */
function mortal(inner: Connect, fate: { due: Crash | null; isDead: boolean }): Connect {
  const gone = () => Object.assign(new Error('the program ended'), { code: 'SQLITE_IOERR' });
  return (path, use) => {
    const db = inner(path, use);
    const alive = <T>(work: () => T): T => {
      if (fate.isDead) throw gone();
      return work();
    };
    const run: Connection['run'] = (sql, args) => {
      if (sql !== 'COMMIT' || fate.due === null) return db.run(sql, args);
      if (fate.due === 'after the commit') db.run(sql, args);
      fate.isDead = true;
      throw gone();
    };
    return {
      all: (sql, args) => alive(() => db.all(sql, args)),
      // What was open when the program ended is rolled back by the engine.
      run: (sql, args) => (sql === 'ROLLBACK' ? db.run(sql, args) : alive(() => run(sql, args))),
      close: () => db.close(),
    };
  };
}

/** Opens a fresh data directory; `begin` are the shop's first commands. */
export async function openBadDay(seed: number, chance: Chance, owner: Ref<'person'>, begin: readonly (readonly Line[])[]): Promise<BadDay> {
  const random = seededBytes(seed);
  const dirs = [mkdtempSync(join(tmpdir(), 'lemel-'))];
  const faults = { busy: 0, lostBefore: 0, lostAfter: 0 };
  const fate = { due: null as Crash | null, isDead: false };
  const clock = { now: instant(Date.UTC(2026, 11, 1, 9)) };
  const { connect } = faulty(seed, faults);
  const acknowledged: Map<string, Extract<Answer, { answer: 'written' }>> = new Map();
  const happened = new Map<string, number>();
  let store: Store;
  let app: App;
  let cookie = '';
  let signIn: () => Promise<string>;
  let forms = 0;
  const open = async (dir: string) => {
    fate.isDead = false;
    fate.due = null;
    const read = (): Instant => clock.now;
    store = await openStore({ dir, sqlDir: SQL_DIR, clock: read, random, connect: mortal(connect, fate) });
    if (store.readOnly !== null) throw new Error(store.readOnly);
    const access = openAccess(store.access, store.pepper, read, random);
    const pages = {
      assetsDir: join(import.meta.dirname, '..', '..', 'views', 'assets'),
      photosDir: join(dir, 'photos'),
      note: () => undefined,
    };
    const web = { store, access, directory: await openDirectory(store), clock: read, random, baseUrl: 'http://127.0.0.1:8417', ...pages };
    app = createApp(web, (error) => {
      throw error;
    });
    signIn = async () => `lemel=${await access.beginSession(owner, 'this-pc')}`;
    cookie = await signIn();
  };
  const noted = (command: Command, answer: Answer): Answer => {
    if (answer.answer === 'written') acknowledged.set(command.id, answer);
    return answer;
  };
  const same = (first: Answer, again: Answer): Answer => {
    if (first.answer === 'written' && JSON.stringify(first) !== JSON.stringify(again))
      throw new Error(`answered ${JSON.stringify(first)}, then ${JSON.stringify(again)}`);
    return again;
  };
  const reopen = async (dir = dirs.at(-1) ?? '') => {
    await store.close();
    await open(dir);
  };

  /** What befalls a command, each kind by its own name. */
  const befalls: Readonly<Record<string, (command: Command) => Promise<Answer>>> = {
    nothing: (command) => store.record(command),
    async 'a busy file and lost commits'(command) {
      Object.assign(faults, { busy: 3, lostBefore: 60, lostAfter: 60 });
      try {
        return await store.record(command);
      } finally {
        Object.assign(faults, { busy: 0, lostBefore: 0, lostAfter: 0 });
      }
    },
    async 'a double tap'(command) {
      const [first, second] = await Promise.all([store.record(command), store.record(command)]);
      return same(first, second);
    },
    async 'a lost answer'(command) {
      const first = await store.record(command);
      return same(first, await store.record(command));
    },
    async 'a second tab'(command) {
      // A form that begins a thing makes the name of it: no other tab has the same.
      if (command.lines.some(({ type }) => Object.values(entryType(type).fields).some(({ role }) => role === 'begins')))
        return store.record(command);
      const rival = { ...command, id: `${command.id}-tab` };
      const [first, second] = await Promise.all([store.record(command), store.record(rival)]);
      noted(rival, second);
      const doubled = first.answer === 'written' && second.answer === 'written';
      if (doubled && !command.lines.every(({ type }) => entryType(type).commutes))
        throw new Error(`written twice: ${JSON.stringify(command.lines)}`);
      return first;
    },
    'a crash before the commit': (command) => crashed(command, 'before the commit'),
    'a crash after the commit': (command) => crashed(command, 'after the commit'),
    async 'a restart'(command) {
      const answer = await store.record(command);
      await reopen();
      return same(answer, await store.record(command));
    },
    async 'a restored copy'(command) {
      await store.close();
      const [from, older] = [dirs.at(-1) ?? '', mkdtempSync(join(tmpdir(), 'lemel-'))];
      cpSync(from, older, { recursive: true });
      await open(from);
      const answer = await store.record(command);
      await store.issueCheckpoint();
      await store.close();
      await open(moved(dirs));
      if (answer.answer === 'written') await refusesOlder(older, dirs.at(-1) ?? '');
      rmSync(older, { recursive: true });
      return same(answer, await store.record(command));
    },
    async 'a clock that jumps'(command) {
      clock.now = instant(clock.now + Math.round((chance.unit() - 0.4) * 8 * 3_600_000));
      return store.record(command);
    },
  };

  async function crashed(command: Command, when: Crash): Promise<Answer> {
    fate.due = when;
    const first = await store.record(command).catch(() => null);
    await reopen();
    if (first !== null) return same(first, await store.record(command));
    const [{ n } = { n: 0 }] = await store.read('SELECT COUNT(*) AS n FROM command WHERE id = ?', [command.id]);
    const again = await store.record(command);
    // What is refused or asked about ends its transaction too, and leaves nothing either way.
    if (again.answer === 'written' && Number(n) !== (when === 'after the commit' ? 1 : 0))
      throw new Error(`a crash ${when} left ${n} of the command`);
    return again;
  }

  /** The memory outside the database knows a copy that lacks what was signed since. */
  async function refusesOlder(older: string, newest: string): Promise<void> {
    cpSync(join(newest, 'checkpoints.log'), join(older, 'checkpoints.log'));
    const copy = await openStore({ dir: older, sqlDir: SQL_DIR, clock: () => clock.now, random: seededBytes(1) });
    const { readOnly } = copy;
    await copy.close();
    if (readOnly === null) throw new Error('an older copy was opened for writing');
  }

  await open(dirs[0] ?? '');
  const send: BadDay['send'] = async (lines) => {
    const rows = await store.read('SELECT stream, COUNT(*) AS n FROM entry_link GROUP BY stream');
    const seen = Object.fromEntries(rows.map(({ stream, n }) => [String(stream), Number(n)]));
    const command: Command = {
      id: `s${seed}-${forms++}`,
      by: owner,
      auth: forms <= begin.length ? 'password' : 'pin',
      device: 'till',
      seen,
      lines,
    };
    clock.now = instant(clock.now + 60_000 * (1 + chance.below(90)));
    const names = Object.keys(befalls);
    const what = forms <= begin.length || chance.hits(0.5) ? 'nothing' : (chance.pick(names) ?? 'nothing');
    happened.set(what, (happened.get(what) ?? 0) + 1);
    return noted(command, (await befalls[what]?.(command)) ?? { answer: 'conflict', stream: '', since: [] });
  };
  for (const lines of begin) {
    const answer = await send(lines);
    if (answer.answer !== 'written') throw new Error(JSON.stringify(answer));
  }
  return {
    get store() {
      return store;
    },
    ...{ send, acknowledged, happened },
    async json(path) {
      const ask = () => app.request(path, { headers: { cookie, accept: 'application/json' } });
      let answer = await ask();
      if (answer.status === 401) {
        cookie = await signIn();
        answer = await ask();
      }
      if (answer.status !== 200) throw new Error(`${path}: ${answer.status} ${await answer.text()}`);
      return answer.json();
    },
    async close() {
      await store.close();
      for (const dir of dirs) rmSync(dir, { recursive: true, force: true });
    },
  };
}

/** The newest directory copied to a new one, which is the newest from now on. */
function moved(dirs: string[]): string {
  const dir = mkdtempSync(join(tmpdir(), 'lemel-'));
  cpSync(dirs.at(-1) ?? '', dir, { recursive: true });
  dirs.push(dir);
  return dir;
}
