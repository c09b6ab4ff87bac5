import { describe, expect, it } from 'vitest';
import { pieceWeighed } from '../../src/entries/piece-weighed.ts';
import { deciding, piece } from './views.ts';

describe('piece_weighed', () => {
  const decides = deciding(pieceWeighed);

  it('is refused for a piece that has gone home', () => {
    expect(decides({ piece: piece({ gone: true }) })).toBe('piece_is_gone');
  });
});
