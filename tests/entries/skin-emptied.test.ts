import { describe, expect, it } from 'vitest';
import { skinEmptied } from '../../src/entries/skin-emptied.ts';
import { deciding, lot } from './views.ts';

describe('skin_emptied', () => {
  const decides = deciding(skinEmptied);

  it('is refused into a lot that is sealed', () => {
    expect(decides({ lot: lot({ status: 'sealed' }) })).toBe('lot_is_sealed');
  });
});
