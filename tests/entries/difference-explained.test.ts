import { describe, expect, it } from 'vitest';
import { differenceExplained } from '../../src/entries/difference-explained.ts';
import { THINGS } from '../vectors/samples.ts';
import { deciding } from './views.ts';

describe('difference_explained', () => {
  const decides = deciding(differenceExplained);

  it('is refused in the name of somebody who did not sign for it', () => {
    expect(decides({}, { person: THINGS.setter }, { by: THINGS.owner, witness: THINGS.owner })).toBe('not_the_explainer');
  });
  it('is signed by the one who explains it, or names nobody', () => {
    expect(decides({}, { person: THINGS.setter }, { by: THINGS.setter })).toBeNull();
    expect(decides({}, { person: THINGS.setter }, { by: THINGS.owner, witness: THINGS.setter })).toBeNull();
    expect(decides({}, { person: undefined })).toBeNull();
  });
});
