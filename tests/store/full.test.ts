// A disk that fills while a photograph is kept: it is said, and nothing half written stays. The system's limit on the size of a file stands for
// the disk, for it needs no mount (POSIX, RLIMIT_FSIZE; the write fails with EFBIG where a full disk says ENOSPC).
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { BUILD } from '../build.ts';

const kept = (dir: string, limit: string) => {
  const script = join(import.meta.dirname, 'full.mjs');
  const { stdout, stderr } = spawnSync(
    'bash',
    ['-c', `ulimit -f ${limit}; exec "$0" "$@"`, process.execPath, script, join(BUILD, 'src'), dir],
    {
      encoding: 'utf8',
    },
  );
  if (stdout === '') throw new Error(stderr);
  return JSON.parse(stdout) as { readonly code?: string; readonly say?: string; readonly hash?: string };
};

it('a photograph that finds no room leaves nothing behind and says so, and is taken once there is room', () => {
  const dir = mkdtempSync(join(tmpdir(), 'lemel-full-'));
  expect(kept(dir, '16')).toEqual({ code: 'SQLITE_FULL', say: expect.stringMatching(/^The disk is full.*\.$/) });
  expect(readdirSync(dir)).toEqual([]);
  const { hash } = kept(dir, 'unlimited');
  expect(readdirSync(dir)).toEqual([`${hash}.webp`]);
  rmSync(dir, { recursive: true });
});
