// Who was allowed to write what is written, asked again of the leaves: by role, by what was typed, by screen, as things stood then and not since.
import { beforeEach, describe, expect, it } from 'vitest';
import { whyNotAllowed } from '../../src/ledger/allowed.ts';
import type { Leaf, Line } from '../../src/ledger/leaf.ts';
import type { Ref } from '../../src/units/ids.ts';
import { type MemoryLedger, memoryLedger } from '../memory-ledger.ts';
import { line } from '../shop.ts';

let ledger: MemoryLedger;
let ben: Ref<'person'>;
let eve: Ref<'person'>;
let job: Ref<'job'>;
beforeEach(async () => {
  ledger = await memoryLedger();
  const { names } = ledger;
  [ben, eve, job] = [names.ref('person'), names.ref('person'), names.ref('job')];
  await write(line('person_joined', { person: ben, role: 'bench', name: 'Ben' }));
  await write(line('person_joined', { person: eve, role: 'auditor', name: 'Eve' }));
  await write(line('job_opened', { job, bag: names.bag(), broughtBy: 'customer', owner: 'customer', channel: 'counter' }));
});

async function write(one: Line): Promise<Leaf> {
  const decided = await ledger.tell(ledger.command([one]));
  if ('answer' in decided) throw new Error(JSON.stringify(decided.answer));
  return decided.drafted[0]?.kept.leaf as Leaf;
}
const note = () => write(line('note_added', { about: job, text: 'seen' }));
/** What is said of a leaf as a program without these rules would have written it. */
const said = (leaf: Leaf, over: Partial<Leaf>) => whyNotAllowed(ledger.overlay, { ...leaf, ...over }, ledger.names.shop);

describe('an entry', () => {
  it('is its writer’s who works here, known as surely as it asks', async () => {
    const [noted, joined] = [
      await note(),
      await write(line('person_joined', { person: ledger.names.ref('person'), role: 'bench', name: 'Zoe' })),
    ];
    expect(await said(noted, { by: ben, auth: 'session' })).toBeNull();
    expect(await said(noted, { by: eve, auth: 'password' })).toMatch(/role/);
    expect(await said(noted, { by: ledger.names.ref('person') })).toMatch(/nobody who worked here/);
    expect(await said(noted, { witness: ledger.names.ref('person') })).toMatch(/witness/);
    expect(await said(joined, {})).toBeNull();
    expect(await said(joined, { by: ben })).toMatch(/role/);
    expect(await said(joined, { auth: 'pin' })).toMatch(/without the password/);
    const away = await write(line('released', { of: job, purpose: 'setting' }));
    expect(await said(away, { by: ben, auth: 'session' })).toMatch(/without the PIN/);
    expect(await said(away, { by: ben, auth: 'pin' })).toBeNull();
  });
  it('is nobody’s once they have left, and at no screen that was withdrawn', async () => {
    const noted = await note();
    await write(line('person_left', { person: ben }));
    expect(await said(noted, { by: ben })).toMatch(/nobody who worked here/);
    const { shop } = ledger.names;
    await write(line('device_enrolled', { shop, device: 'tablet-1', name: 'Tablet', kind: 'bench' }));
    expect(await said(noted, { device: 'tablet-1' })).toBeNull();
    await write(line('device_withdrawn', { shop, device: 'tablet-1', name: 'Tablet' }));
    expect(await said(noted, { device: 'tablet-1' })).toMatch(/withdrawn/);
  });
  it('that is corrected by somebody else asks for their PIN', async () => {
    const target = ledger.overlay.written.at(-1);
    if (!target) throw new Error('nothing was written');
    const { hash, seq, leaf } = target;
    const times = { field: 'occurredAt', was: leaf.occurredAt, is: leaf.occurredAt - 60_000 };
    const corrected = await write(line('corrected', { target: hash, seq, ...times, reason: 'a minute before' }));
    expect(await said(corrected, { auth: 'session' })).toBeNull();
    expect(await said(corrected, { by: ben, auth: 'session' })).toMatch(/without the PIN/);
    expect(await said(corrected, { by: ben, auth: 'pin' })).toBeNull();
    expect(await said(corrected, { data: { ...corrected.data, target: `A${hash.slice(1)}` } })).toMatch(/not in this ledger/);
  });
});
