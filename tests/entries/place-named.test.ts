import { describe, expect, it } from 'vitest';
import { anyStaff, ownerByPassword } from '../../src/book/may.ts';
import { placeNamed } from '../../src/entries/place-named.ts';
import { SAMPLES, THINGS } from '../vectors/samples.ts';

describe('place_named', () => {
  it('is for the owner, by password, where an insurer’s limit is given, and for anybody where none is', () => {
    const { limit: _none, ...said } = SAMPLES.place_named;
    if (typeof placeNamed.may !== 'function') throw new Error('asks the same of everybody');
    expect(placeNamed.may({}, SAMPLES.place_named, { by: THINGS.owner })).toEqual(ownerByPassword);
    expect(placeNamed.may({}, said, { by: THINGS.owner })).toEqual(anyStaff);
  });
});
