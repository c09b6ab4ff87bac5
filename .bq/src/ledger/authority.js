import { isSureEnough } from '../book/may.js';
/** Who may write this, with what is said in it. */
export const mayOf = ({ may }, view, data, asker) => (typeof may === 'function' ? may(view, data, asker) : may);
/** What a form asks for from the start; where that depends on things that are not loaded yet, the ledger's own refusal asks. */
export const authNeeded = (entry, asker, view) =>
  typeof entry.may === 'function' && view === undefined ? 'session' : mayOf(entry, view ?? {}, {}, asker).asks;
/** Why somebody of that role, known in that way, may not write it; null when they may. */
export function notAllowed(may, role, auth) {
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
export const neverAllowed = ({ may }, role) => (typeof may === 'function' ? null : notAllowed(may, role, 'password'));
