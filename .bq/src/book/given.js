import { fact } from './facts.js';
/** The fact that `make` builds of a value, or none where the value was left out. */
export const given = (value, make) => (value === undefined ? [] : [make(value)]);
/** An identity fact of `of` for each mark that was given. */
export const identities = (of, marks) =>
  Object.entries(marks).flatMap(([mark, says]) => given(says, (words) => fact('identity', { of, mark, says: words })));
