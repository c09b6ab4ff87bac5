// Who may write an entry, and how sure it must be that it is they: an entry says it, the ledger enforces it by whatever way it came.
import type { Ref } from '../units/ids.ts';
import type { StaffRole } from './facts.ts';

/** How it is known who writes: a session, a PIN or the owner's password typed for this entry; 'import' is whoever holds the data directory. */
export type Auth = 'session' | 'pin' | 'password' | 'import';
/** Which roles may write it, and what they type again to sign for it. */
export interface May {
  readonly roles: readonly StaffRole[];
  readonly asks: Exclude<Auth, 'import'>;
}
/** Who asks to write. */
export interface Asker {
  readonly by: Ref<'person'>;
}

const STAFF: readonly StaffRole[] = ['owner', 'bench', 'counter'];

/** Whoever works here, as signed in. */
export const anyStaff: May = { roles: STAFF, asks: 'session' };
/** Whoever works here, with the PIN typed again: what leaves the premises, what comes after hand-back, what is signed for. */
export const anyStaffByPin: May = { roles: STAFF, asks: 'pin' };
/** The owner, with the password typed again: people, roles, policy, devices, balances, terms, limits. */
export const ownerByPassword: May = { roles: ['owner'], asks: 'password' };

const RANK: Readonly<Record<Auth, number>> = { session: 0, pin: 1, password: 2, import: 2 };

/** Whether what was typed is as sure as what is asked. */
export const isSureEnough = (auth: Auth, asks: May['asks']): boolean => RANK[auth] >= RANK[asks];

/** The surer of what two ask. */
export const surer = (a: May['asks'], b: May['asks']): May['asks'] => (isSureEnough(a, b) ? a : b);
