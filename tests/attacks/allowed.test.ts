// A ledger that a program without the rules of who may write has written, signed with the shop's own key: the check tells the first such entry.
import { spawnSync } from 'node:child_process';
import { rmSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it, vi } from 'vitest';
import type * as authority from '../../src/ledger/authority.ts';
import { BUILD } from '../build.ts';
import { line, openShop } from '../shop.ts';

vi.mock('../../src/ledger/authority.ts', async (original) => ({ ...(await original<typeof authority>()), notAllowed: () => null }));

it.each([
  [
    'somebody at the counter makes an owner',
    'counter',
    'person_joined',
    'password',
    /Entry 5 was written by somebody whose role may not write it\./,
  ],
  [
    'the owner does so without the password',
    'owner',
    'person_joined',
    'session',
    /Entry 5 was written without the password that it asks for\./,
  ],
  ['an auditor takes notes', 'auditor', 'lot_opened', 'password', /Entry 5 was written by somebody whose role may not write it\./],
  ['somebody at the bench opens a lot', 'bench', 'lot_opened', 'session', /^7 entries, whole and unaltered/],
] as const)('%s', async (_what, role, type, auth, said) => {
  const shop = await openShop();
  const [person, other] = [shop.newRef('person'), shop.newRef('person')];
  await shop.write(line('person_joined', { person, role, name: 'Somebody' }));
  const data =
    type === 'lot_opened' ? { lot: shop.newRef('lot'), name: 'Scrap', metal: 'gold-750' } : { person: other, role: 'owner', name: 'X' };
  expect(await shop.tell([line(type, data)], { by: person, auth })).toMatchObject({ answer: 'written', from: 5 });
  await shop.write(line('lot_opened', { lot: shop.newRef('lot'), name: 'More', metal: 'gold-750' }));
  await shop.store.close();
  // The program as it is run knows the rules.
  const env = { ...process.env, LEMEL_DATA: shop.dir };
  const { stdout, stderr } = spawnSync(process.execPath, [join(BUILD, 'src', 'cli.js'), 'verify-log'], { encoding: 'utf8', env });
  rmSync(shop.dir, { recursive: true });
  expect(stdout + stderr).toMatch(said);
});
