// Facts that are said only when something was given: an optional field left out says nothing.
import type { Ref } from '../units/ids.ts';
import { type Fact, fact } from './facts.ts';

/** The fact that `make` builds of a value, or none where the value was left out. */
export const given = <T>(value: T | undefined, make: (value: T) => Fact): readonly Fact[] => (value === undefined ? [] : [make(value)]);

/** An identity fact of `of` for each mark that was given. */
export const identities = (of: Ref, marks: Readonly<Record<string, string | undefined>>): readonly Fact[] =>
  Object.entries(marks).flatMap(([mark, says]) => given(says, (words) => fact('identity', { of, mark, says: words })));
