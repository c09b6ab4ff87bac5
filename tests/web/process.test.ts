// The program as a process: killed while it writes, started twice, on a taken port, on a place it cannot write.
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, describe, expect, it } from 'vitest';
import { openStore } from '../../src/store/open.ts';
import { instant } from '../../src/units/dates.ts';
import { firstRun, placeForm, post, signIn } from '../asked.ts';
import { freePort, type Program, serving, start } from '../program.ts';
import { SQL_DIR, seededBytes } from '../shop.ts';

const running: Program[] = [];
const folders: string[] = [];
afterEach(async () => {
  for (const { child, ended } of running.splice(0)) {
    child.kill('SIGKILL');
    await ended;
  }
  for (const folder of folders.splice(0)) rmSync(folder, { recursive: true, force: true });
});
function newFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'lemel-process-'));
  folders.push(folder);
  return folder;
}
async function serve(dir: string): Promise<Program> {
  const program = await serving({ dir });
  running.push(program);
  return program;
}

describe('kill -9 while people write', () => {
  it('loses no answered entry and doubles none, ten times over', { timeout: 120_000 }, async () => {
    const dir = newFolder();
    let program = await serve(dir);
    await firstRun(program);
    const random = seededBytes(7);
    const answered = new Map<string, string>();
    const unanswered: Record<string, string | string[]>[] = [];
    for (let round = 0; round < 10; round++) {
      const cookie = await signIn(program.url);
      for (const form of unanswered.splice(0))
        answered.set(String(form.formKey), await placeOf(await post(program.url, '/write/place_named', form, cookie)));
      let count = 0;
      // Killed at this many answers, so that a slow machine sees no fewer.
      let left = 6 + ((random(1)[0] ?? 0) % 16);
      const write = async (writer: number) => {
        for (;;) {
          const form = await placeForm(program.url, cookie, `Tray ${round}.${writer}.${count++}`).catch(() => null);
          if (!form) return;
          const answer = await post(program.url, '/write/place_named', form, cookie).catch(() => null);
          if (answer?.status !== 303) {
            unanswered.push(form);
            return;
          }
          answered.set(String(form.formKey), await placeOf(answer));
          if (--left === 0) program.child.kill('SIGKILL');
        }
      };
      await Promise.all([0, 1, 2, 3].map(write));
      await program.ended;
      program = await serve(dir);
    }
    const cookie = await signIn(program.url);
    for (const form of unanswered)
      answered.set(String(form.formKey), await placeOf(await post(program.url, '/write/place_named', form, cookie)));
    program.child.kill('SIGTERM');
    expect(await program.ended).toBe(0);

    const store = await openStore({ dir, sqlDir: SQL_DIR, clock: () => instant(Date.now()), random });
    const rows = await store.read('SELECT command.id, from_seq, leaf FROM command JOIN entry ON entry.seq = command.from_seq');
    const found = new Map(rows.map(({ id, from_seq }) => [String(id), `/entries/${from_seq}`]));
    expect(answered.size).toBeGreaterThan(50);
    for (const [form, where] of answered) expect(found.get(form)).toBe(where);
    const names = (await store.read("SELECT leaf FROM entry WHERE type = 'place_named'")).map(
      ({ leaf }) => (JSON.parse(new TextDecoder().decode(leaf as ArrayBuffer)) as { data: { name: string } }).data.name,
    );
    expect(new Set(names).size).toBe(names.length);
    expect(await store.check()).not.toHaveProperty('bad');
    await store.close();
  });
});

/** Where an answer sends the person: the entry that was written. */
async function placeOf(answer: Response): Promise<string> {
  if (answer.status !== 303) throw new Error(`${answer.status}: ${await answer.text()}`);
  return answer.headers.get('location') ?? '';
}

describe('a start', () => {
  it('of a second program on the same data is refused with a sentence', async () => {
    const dir = newFolder();
    await serve(dir);
    const second = start({ dir, port: await freePort() });
    expect(await second.ended).toBe(1);
    expect(second.said()).toContain('Another Lemel is running on these data');
  });

  it('of a second program is refused though the lock was deleted, until the first has ended', async () => {
    const dir = newFolder();
    const first = await serve(dir);
    await firstRun(first);
    const cookie = await signIn(first.url);
    for (const _again of [1, 2]) {
      rmSync(join(dir, 'lock.db'), { force: true });
      const second = start({ dir, port: await freePort() });
      expect(await second.ended).toBe(1);
      expect(second.said()).toContain('another program has ledger.db open');
    }
    for (const path of ['/', '/bench', '/setup', '/sign-in']) {
      const page = await (await fetch(first.url + path, { headers: { cookie } })).text();
      expect([path, page]).toEqual([path, expect.stringContaining('lock.db was deleted')]);
    }
    first.child.kill('SIGKILL');
    await first.ended;
    const after = await serve(dir);
    const form = await placeForm(after.url, await signIn(after.url), 'Tray');
    expect((await post(after.url, '/write/place_named', form, await signIn(after.url))).status).toBe(303);
  });

  it('on a port in use is refused with a sentence', async () => {
    const { url } = await serve(newFolder());
    const second = start({ dir: newFolder(), port: Number(new URL(url).port) });
    expect(await second.ended).toBe(1);
    expect(second.said()).toMatch(/Port \d+ is in use/);
  });

  it('on a data directory that is a file, or with settings that are none, says what is wrong', async () => {
    const file = join(newFolder(), 'data');
    writeFileSync(file, '');
    const onFile = start({ dir: file, port: await freePort() });
    expect(await onFile.ended).toBe(1);
    expect(onFile.said().trim()).not.toBe('');
    const wrong = start({ dir: newFolder(), port: 70_000, env: { LEMEL_COLOUR: 'gold' } });
    expect(await wrong.ended).toBe(1);
    expect(wrong.said()).toContain('LEMEL_PORT');
    expect(wrong.said()).toContain('LEMEL_COLOUR');
  });

  it('makes the owner by the link it prints, once, and by no other', async () => {
    const dir = newFolder();
    const program = await serve(dir);
    expect((await fetch(`${program.url}/first-run?key=guess`)).status).toBe(403);
    await firstRun(program);
    const key = /key=(\S+)/.exec(program.said())?.[1] ?? '';
    expect((await fetch(`${program.url}/first-run?key=${key}`)).status).toBe(403);
    expect(await signIn(program.url)).toMatch(/^lemel=/);
    const noted = [...program.said().matchAll(/^\{"at":"[^"]+","happened":"(\w+)"/gm)].map(([, code]) => code);
    expect(noted).toEqual(['link_refused', 'signed_in', 'link_refused', 'signed_in']);
  });
});
