// A start on a full disk: everything can be read, by whoever signs in; nothing is written, and every page says why. A real small file system,
// mounted in a name space of this test's own (mount_namespaces(7), tmpfs(5)); where the system has none, there is nothing to try it on.
import { spawn, spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { firstRun, placeForm, post, signIn } from '../asked.ts';
import { BUILD } from '../build.ts';
import { freePort } from '../program.ts';

const canMount = spawnSync('unshare', ['--user', '--map-root-user', '--mount', 'mount', '-t', 'tmpfs', 'tmpfs', tmpdir()]).status === 0;
const SERVER = join(BUILD, 'src', 'server.js');

/** A shell that sees a file system of 48 MB at `at`, and runs one command after another. */
function shellOn(at: string) {
  const child = spawn('unshare', ['--user', '--map-root-user', '--mount', 'bash'], { stdio: ['pipe', 'pipe', 'pipe'] });
  let said = '';
  let listeners: readonly (() => boolean)[] = [];
  const hear = (chunk: Buffer) => {
    said += chunk.toString();
    listeners = listeners.filter((isDone) => !isDone());
  };
  child.stdout.on('data', hear);
  child.stderr.on('data', hear);
  /** Until it has said this, after what it had said by then. */
  const saying = (words: RegExp): Promise<void> => {
    const before = said.length;
    return new Promise((resolve) => {
      listeners = [
        ...listeners,
        () => {
          const isSaid = words.test(said.slice(before));
          if (isSaid) resolve();
          return isSaid;
        },
      ];
    });
  };
  let commands = 0;
  const run = (command: string): Promise<void> => {
    const done = `done ${++commands} `;
    child.stdin.write(`${command}\necho "${done}"\n`);
    return saying(new RegExp(done));
  };
  const ended = new Promise((resolve) => child.once('close', resolve));
  return {
    run,
    said: () => said,
    /** Starts the program, and waits until it serves. */
    async start(): Promise<string> {
      const port = await freePort();
      const serving = saying(/first-run\?key=|Lemel is at/);
      await run(`LEMEL_DATA=${at}/data LEMEL_PORT=${port} '${process.execPath}' '${SERVER}' & server=$!`);
      await serving;
      return `http://127.0.0.1:${port}`;
    },
    kill: () => run('kill -9 $server; wait $server 2>/dev/null'),
    async end() {
      child.stdin.end('kill -9 $server 2>/dev/null\n');
      await ended;
    },
  };
}

const statusOf = async (answer: Response | Promise<Response>) => (await answer).status;

describe.skipIf(!canMount)('a disk that is full at the start', () => {
  const at = mkdtempSync(join(tmpdir(), 'lemel-full-'));
  const shell = canMount ? shellOn(at) : null;
  const fill = () => shell?.run(`cat /dev/zero > ${at}/fill 2>/dev/null`);
  let form: Record<string, string | string[]>;
  beforeAll(async () => {
    await shell?.run(`mount -t tmpfs -o size=48m tmpfs ${at} && mkdir ${at}/data`);
    const url = (await shell?.start()) ?? '';
    await firstRun({ url, said: () => shell?.said() ?? '' });
    const cookie = await signIn(url);
    form = await placeForm(url, cookie, 'First tray');
    expect(await statusOf(post(url, '/write/place_named', form, cookie))).toBe(303);
  });
  afterAll(async () => {
    await shell?.end();
    rmSync(at, { recursive: true, force: true });
  });

  // What another tool closed last has neither log nor index beside it; what was killed has both; a copy may have lost the lock.
  it.each(['', 'rm data/*-shm', 'rm data/lock.db', 'rm data/lock.db data/*-shm'])('is read all the same (killed; %s)', async (loses) => {
    await shell?.kill();
    await shell?.run(`rm -f ${at}/fill; cd ${at}; ${loses || 'true'}`);
    await fill();
    const url = (await shell?.start()) ?? '';
    const ready = await fetch(`${url}/readyz`);
    expect([ready.status, await ready.json()]).toEqual([
      503,
      expect.objectContaining({ ready: false, trouble: expect.stringMatching(/full/) }),
    ]);
    const cookie = await signIn(url);
    expect(cookie).toMatch(/^lemel=.{20}/);
    for (const path of ['/', '/setup', '/trail', '/entries/0', '/write/place_named', '/sign-in']) {
      const page = await fetch(url + path, { headers: { cookie } });
      expect([path, page.status, await page.text()]).toEqual([
        path,
        200,
        expect.stringContaining('Nothing is written now. The disk is full'),
      ]);
    }
    const another = await placeForm(url, cookie, 'Another tray');
    const refused = await post(url, '/write/place_named', another, cookie);
    expect([refused.status, await refused.text()]).toEqual([503, expect.stringContaining('Free some space')]);
    // What was written before is answered as it was, and what is typed now is kept.
    expect((await post(url, '/write/place_named', form, cookie)).headers.get('location')).toMatch(/^\/entries\/\d+$/);
    expect(await statusOf(post(url, '/drafts', { ...another, 'draft.path': '/write/place_named' }, cookie))).toBe(204);
    await shell?.run(`rm ${at}/fill`);
    expect(await statusOf(fetch(`${url}/readyz`))).toBe(200);
    expect(await statusOf(post(url, '/write/place_named', another, cookie))).toBe(303);
  });

  it('while the program runs, stops no sign-in', async () => {
    await shell?.kill();
    const url = (await shell?.start()) ?? '';
    const before = await signIn(url);
    await fill();
    const cookie = await signIn(url);
    expect(await statusOf(fetch(`${url}/setup`, { headers: { cookie } }))).toBe(200);
    const another = await placeForm(url, before, 'One more');
    expect(await statusOf(post(url, '/write/place_named', another, before))).toBe(503);
    await shell?.run(`rm ${at}/fill`);
    expect(await statusOf(post(url, '/write/place_named', another, before))).toBe(303);
  });
});
