// Whether somebody may write an entry: by their role, and by what they typed for it. Asked for every line, by whatever way it came.
import type { StaffRole } from '../book/facts.ts';
import { type Asker, type Auth, isSureEnough, type May } from '../book/may.ts';
import type { AnyEntry, Values, Views } from './registry.ts';

/** Who may write this, with what is said in it. */
export const mayOf = ({ may }: AnyEntry, view: Views, data: Values, asker: Asker): May =>
  typeof may === 'function' ? may(view, data, asker) : may;

/** What a form asks for from the start; where that depends on things that are not loaded yet, the ledger's own refusal asks. */
export const authNeeded = (entry: AnyEntry, asker: Asker, view?: Views): May['asks'] =>
  typeof entry.may === 'function' && view === undefined ? 'session' : mayOf(entry, view ?? {}, {}, asker).asks;

export interface NotAllowed {
  readonly code: 'not_yours_to_write' | 'pin_needed' | 'password_needed';
  readonly say: string;
  readonly field?: 'pin' | 'password';
}

/** Why somebody of that role, known in that way, may not write it; null when they may. */
export function notAllowed(may: May, role: StaffRole, auth: Auth): NotAllowed | null {
  if (!may.roles.includes(role)) {
    const who = may.roles.includes('bench') ? 'Somebody who works at the counter or the bench' : 'Only the owner';
    return { code: 'not_yours_to_write', say: `${who} may write this. Ask them to sign in and write it.` };
  }
  if (isSureEnough(auth, may.asks)) return null;
  return may.asks === 'password'
    ? { code: 'password_needed', say: 'Type your password: this changes what the shop rests on.', field: 'password' }
    : { code: 'pin_needed', say: 'Type your PIN again: you sign for this.', field: 'pin' };
}

/** Why a form is not even shown to somebody of that role: whatever they said and typed, they could not write its entry. */
export const neverAllowed = ({ may }: AnyEntry, role: StaffRole): NotAllowed | null =>
  typeof may === 'function' ? null : notAllowed(may, role, 'password');
