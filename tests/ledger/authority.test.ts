// Who may write an entry, by role and by what was typed, for entries that ask the same of everybody and for one that asks by what is said.
import { describe, expect, it } from 'vitest';
import { anyStaff, anyStaffByPin, type May, ownerByPassword } from '../../src/book/may.ts';
import { authNeeded, mayOf, neverAllowed, notAllowed } from '../../src/ledger/authority.ts';
import { type AnyEntry, entryType } from '../../src/ledger/registry.ts';
import type { Ref } from '../../src/units/ids.ts';

const asker = { by: 'ada' as Ref<'person'> };
const asking = (may: AnyEntry['may']): AnyEntry => ({ ...entryType('note_added'), may });
/** Asks a PIN of a number above 5 said in it, and the password of everybody but Ada and of a job in view. */
const bySaid = asking(({ job }, { number }, { by }): May => {
  if (job !== undefined || by !== asker.by) return ownerByPassword;
  return Number(number ?? 0) > 5 ? anyStaffByPin : anyStaff;
});
const view = { job: { kind: 'shop', id: 'it' as Ref<'shop'>, says: {} } } as const;

describe('who may', () => {
  it('is asked of what is said and seen, and of who asks, where the entry depends on it', () => {
    expect(mayOf(asking(anyStaffByPin), view, { number: 1 }, asker)).toBe(anyStaffByPin);
    expect(mayOf(bySaid, {}, { number: 6 }, asker)).toBe(anyStaffByPin);
    expect(mayOf(bySaid, {}, { number: 5 }, asker)).toBe(anyStaff);
    expect(mayOf(bySaid, view, { number: 5 }, asker)).toBe(ownerByPassword);
    expect(mayOf(bySaid, {}, {}, { by: 'ben' as Ref<'person'> })).toBe(ownerByPassword);
  });
});

describe('what a form asks for from the start', () => {
  it('is what the entry asks of everybody', () => {
    expect([anyStaff, anyStaffByPin, ownerByPassword].map((may) => authNeeded(asking(may), asker))).toEqual(['session', 'pin', 'password']);
  });
  it('is a session alone where that depends on things that are not loaded, and what they say where they are', () => {
    const stranger = { by: 'ben' as Ref<'person'> };
    expect(authNeeded(bySaid, stranger)).toBe('session');
    expect(authNeeded(bySaid, stranger, {})).toBe('password');
    expect(authNeeded(bySaid, asker, {})).toBe('session');
    expect(authNeeded(bySaid, asker, view)).toBe('password');
  });
});

describe('a refusal', () => {
  it('is by role first, whatever was typed', () => {
    expect(notAllowed(ownerByPassword, 'bench', 'password')).toMatchObject({ code: 'not_yours_to_write' });
    expect(notAllowed(anyStaff, 'auditor', 'password')).toMatchObject({ code: 'not_yours_to_write' });
    expect(notAllowed(anyStaff, 'auditor', 'session')).not.toHaveProperty('field');
    // Whom to ask is told, for it differs.
    expect(notAllowed(anyStaff, 'auditor', 'session')?.say).not.toBe(notAllowed(ownerByPassword, 'auditor', 'session')?.say);
  });
  it('is beside what is to be typed, and none where it was, or something surer', () => {
    expect(notAllowed(anyStaffByPin, 'bench', 'session')).toMatchObject({ code: 'pin_needed', field: 'pin' });
    for (const auth of ['session', 'pin'] as const)
      expect(notAllowed(ownerByPassword, 'owner', auth)).toMatchObject({ code: 'password_needed', field: 'password' });
    expect(notAllowed(anyStaff, 'counter', 'session')).toBeNull();
    for (const auth of ['pin', 'password', 'import'] as const) expect(notAllowed(anyStaffByPin, 'bench', auth)).toBeNull();
    expect(notAllowed(ownerByPassword, 'owner', 'password')).toBeNull();
  });
});

describe('a form that is not even shown', () => {
  it('is one whose entry asks the same of everybody, to whom that role may never write it', () => {
    expect(neverAllowed(asking(ownerByPassword), 'bench')).toMatchObject({ code: 'not_yours_to_write' });
    expect(neverAllowed(asking(ownerByPassword), 'owner')).toBeNull();
    expect(neverAllowed(asking(anyStaffByPin), 'counter')).toBeNull();
    expect(neverAllowed(bySaid, 'auditor')).toBeNull();
  });
});
