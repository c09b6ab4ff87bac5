// The shape of an entry type: fields with roles, a form, a decision, facts and plain words. One file in entries/ for each.
import { z } from 'zod';
import { isRef } from '../units/ids.js';
import { weight as weightKind } from './values.js';

const tells = (of, correctable) => ({
  ...of,
  role: 'tells',
  mayBeMissing: false,
  sealed: null,
  kinds: [],
  correctable,
});
const names = (kinds, role) => ({
  schema: z.custom((value) => typeof value === 'string' && kinds.some((kind) => isRef(kind, value)), 'Choose one of these.'),
  control: { kind: 'ref' },
  role,
  mayBeMissing: false,
  sealed: null,
  kinds,
  correctable: false,
});
/** Said or agreed: never corrected, only said anew. */
export const stated = (of) => tells(of, false);
/** Observed: correctable. */
export const observed = (of) => tells(of, true);
/** What a balance said: observed. */
export const weight = () => tells(weightKind(), true);
/** A thing that must exist; its state is loaded into the view. */
export const ref = (...kinds) => names(kinds, 'names');
/** A thing that this entry begins; it must not exist. */
export const begins = (kind) => names([kind], 'begins');
/** A thing that may exist or may begin here. */
export const refOrBegins = (...kinds) => names(kinds, 'names or begins');
/** May be left out. */
export const optional = (field) => ({
  ...field,
  mayBeMissing: true,
});
/** Kept out of the leaf: a salted digest stands there, the value is encrypted under its subject's key. */
export const sealed = (audience, field) => ({ ...field, sealed: audience });
export const refuse = (refused, say, field) => (field === undefined ? { refused, say } : { refused, say, field });
export const ask = (asks, say, field) => (field === undefined ? { asks, say } : { asks, say, field });
export const defineEntry = (entry) => entry;
