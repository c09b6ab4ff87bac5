import { describe, expect, it } from 'vitest';
import { identityChecked } from '../../src/entries/identity-checked.ts';
import { deciding, piece, stone } from './views.ts';

describe('identity_checked', () => {
  const decides = deciding(identityChecked);

  it('is refused for a piece that has gone home, and for a stone that has', () => {
    expect(decides({ piece: piece({ gone: true }) })).toBe('piece_is_gone');
    expect(decides({ stone: stone({ gone: true }) })).toBe('thing_is_gone');
  });
});
