// Short ticket or full path: small work moves by itself, for a reason that is said.
import { describe, expect, it } from 'vitest';
import { newThing, type Thing } from '../../src/ledger/thing.ts';
import { fullPathReasons } from '../../src/projections/path.ts';

const job = (more: Partial<Thing> = {}): Thing => ({ ...newThing('j', 'job', 'j', 0), says: { work: 'size-up' }, ...more });
const piece = (more: Partial<Thing> = {}): Thing => ({ ...newThing('p', 'piece', 'j', 1), ...more });
const stone = (more: Partial<Thing> = {}): Thing => ({
  ...newThing('s', 'stone', 'j', 2),
  says: { species: 'diamond', backing: 'open' },
  ...more,
});
const out = (more: Partial<Thing> = {}) => stone({ stones: 0, says: { species: 'diamond', backing: 'open', condition: 'sound' }, ...more });
const small = { isHighValue: false, nearsGate: false };

describe('a job', () => {
  it('is a short ticket while nothing asks for more', () => {
    expect(fullPathReasons([job(), piece(), stone()], small)).toEqual([]);
  });
  it.each([
    ['a stone came out', [job(), piece(), out()], small],
    ['stones are to come out', [job({ says: { work: 'take-out set' } }), piece(), stone()], small],
    ['a stone came out that was to', [job({ says: { work: 'take-out set' } }), out()], small],
    ['a stone is supplied', [job(), piece(), stone({ stones: 1 })], small],
    ['heat is planned over an unknown stone', [job(), stone({ says: { species: 'unknown', backing: 'open' } })], small],
    ['heat is planned over a foiled stone', [job(), stone({ says: { species: 'diamond', backing: 'foiled' } })], small],
    ['the addition nears the gate', [job()], { ...small, nearsGate: true }],
    ['its value is high', [job()], { ...small, isHighValue: true }],
    ['it is offered to somebody outside', [job({ offered: { says: 'outside', seq: 4 } }), piece()], small],
    ['it is held', [job(), piece({ holds: ['a dispute'] })], small],
  ])('moves to the full path when %s', (_, things, beside) => {
    expect(fullPathReasons(things, beside)).toHaveLength(1);
  });
  it('stays a short ticket over an unknown stone that no heat comes near', () => {
    expect(fullPathReasons([job({ says: { work: 'clean clasp' } }), stone({ says: { species: 'unknown' } })], small)).toEqual([]);
  });
  it('does not move for having gone home by post', () => {
    expect(fullPathReasons([job(), piece({ gone: true, custody: { says: 'outside', seq: 9 } })], small)).toEqual([]);
  });
});
