import { describe, expect, it } from 'vitest';
import { personLeft } from '../../src/entries/person-left.ts';
import { THINGS } from '../vectors/samples.ts';
import { deciding } from './views.ts';

describe('person_left', () => {
  const decides = deciding(personLeft);
  const gone = { kind: 'person', id: THINGS.setter, says: {}, role: 'left' } as const;

  it('is refused of somebody who has left', () => expect(decides({ person: gone })).toBe('has_left'));
  it('is refused by whoever leaves, so that an owner is left', () => expect(decides({}, {}, { by: THINGS.setter })).toBe('own_leaving'));
});
