// The command line as it is typed: help runs nothing, a mistyped name makes nothing, checks and exports run beside whoever writes.
import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { openStore } from '../../src/store/open.ts';
import { BUILD } from '../build.ts';
import { line, openShop, type Shop, SQL_DIR, seededBytes } from '../shop.ts';

let home: string;
let shop: Shop;
beforeEach(async () => {
  home = mkdtempSync(join(tmpdir(), 'lemel-cli-'));
  shop = await openShop({ dir: join(home, 'data') });
  const job = shop.newRef('job');
  await shop.write(line('job_opened', { job, bag: shop.newBag(), broughtBy: 'customer', owner: 'customer', channel: 'counter' }));
  await shop.write(line('note_added', { about: job, text: 'Rings before nine.' }));
});
afterEach(async () => {
  await shop.close();
  rmSync(home, { recursive: true });
});

function lemel(args: readonly string[], { data = join(home, 'data'), input = '' } = {}) {
  const env = { PATH: process.env.PATH ?? '', LEMEL_DATA: data };
  const { status, stdout, stderr } = spawnSync(process.execPath, [join(BUILD, 'src', 'cli.js'), ...args], { env, input, encoding: 'utf8' });
  return { status, stdout, stderr };
}
const COMMANDS = ['verify-log', 'export', 'import', 'rebuild', 'owner-pin'];

describe('the command line', () => {
  it.each(COMMANDS)('says how %s is called, and runs nothing of it', (command) => {
    const nowhere = join(home, 'nowhere');
    const { status, stdout, stderr } = lemel([command, '--help'], { data: nowhere });
    expect([status, stderr]).toEqual([0, '']);
    expect(stdout).toContain(`lemel ${command}`);
    expect(stdout).toMatch(/Ends with 0/);
    expect(existsSync(nowhere)).toBe(false);
  });

  it('answers --help and --version, and names a command that there is not', () => {
    const { status, stdout } = lemel(['--help']);
    expect(status).toBe(0);
    for (const command of COMMANDS) expect(stdout).toContain(command);
    expect(lemel(['--version'])).toMatchObject({ status: 0, stdout: expect.stringMatching(/^\d+\.\d+\.\d+\n$/) });
    expect(lemel(['verify'])).toMatchObject({ status: 2, stderr: expect.stringContaining('no command verify') });
    expect(lemel([])).toMatchObject({ status: 2 });
    expect(lemel(['verify-log', '--fast'])).toMatchObject({ status: 2, stderr: expect.stringContaining('--fast') });
    expect(lemel(['rebuild', 'now'])).toMatchObject({ status: 2, stderr: expect.stringContaining('now') });
  });

  it.each(['verify-log', 'export', 'rebuild', 'owner-pin'])(
    '%s says what a mistyped directory does not hold, and makes none',
    (command) => {
      const nowhere = join(home, 'dta');
      const { status, stderr } = lemel([command], { data: nowhere, input: '4417\n' });
      expect(status).toBe(1);
      expect(stderr).toContain(`There is no ledger in ${nowhere}`);
      expect(existsSync(nowhere)).toBe(false);
    },
  );

  it('checks and exports beside a program that has the ledger open', () => {
    expect(lemel(['verify-log'])).toMatchObject({ status: 0, stdout: expect.stringMatching(/^6 entries, whole and unaltered/) });
    const { status, stdout } = lemel(['export']);
    expect(status).toBe(0);
    expect(stdout.split('\n')[0]).toBe(JSON.stringify({ kind: 'ledger', version: 1, log: shop.store.log }));
    expect(lemel(['rebuild'])).toMatchObject({ status: 1, stderr: expect.stringContaining('Another Lemel is running') });
    expect(shop.store.readOnly).toBeNull();
  });

  it('imports with its keys into a ledger that is written on, and asks for them before it makes anything', async () => {
    const [file, data] = [join(home, 'export.jsonl'), join(home, 'again')];
    writeFileSync(file, lemel(['export']).stdout);
    const without = lemel(['import', file], { data });
    expect(without).toMatchObject({ status: 2, stderr: expect.stringMatching(/nothing can be written on.*no name can be read/) });
    expect(lemel(['import', join(home, 'no.jsonl'), '--without-keys'], { data })).toMatchObject({ status: 2 });
    expect(existsSync(data)).toBe(false);
    const other = await openShop({ seed: 77 });
    expect(lemel(['import', file, '--keys', other.dir], { data })).toMatchObject({
      status: 1,
      stderr: expect.stringMatching(/another key/),
    });
    await other.close();
    expect(existsSync(data)).toBe(false);
    expect(lemel(['import', file, '--keys', join(home, 'data')], { data })).toMatchObject({ status: 0, stdout: '6 entries imported.\n' });
    const store = await openStore({ dir: data, sqlDir: SQL_DIR, clock: () => shop.clock.now, random: seededBytes(4) });
    expect([store.readOnly, store.told]).toEqual([null, []]);
    expect(await store.check()).toMatchObject({ size: 6, closed: 0, told: [] });
    await store.close();
    expect(lemel(['import', file, '--keys', join(home, 'data')], { data })).toMatchObject({ status: 2 });
  });

  it('reads the owner’s PIN from standard input alone', async () => {
    await shop.store.close();
    expect(lemel(['owner-pin', '4417'])).toMatchObject({ status: 2 });
    expect(lemel(['owner-pin'], { input: 'abc\n' })).toMatchObject({ status: 2, stderr: expect.stringContaining('4 to 8 figures') });
    expect(lemel(['owner-pin'], { input: '4417\n' })).toMatchObject({ status: 0 });
  });
});

describe('files of a data directory', () => {
  it('are for nobody else to read from their birth', () => {
    const modes = [
      'ledger.db',
      'ledger.db-wal',
      'ledger.db-shm',
      'keys.db',
      'access.db',
      'lock.db',
      'checkpoints.log',
      'keys/seed',
      'keys/mac',
      'keys/pepper',
    ];
    expect(modes.map((name) => [name, statSync(join(home, 'data', name)).mode & 0o777])).toEqual(modes.map((name) => [name, 0o600]));
  });
});
