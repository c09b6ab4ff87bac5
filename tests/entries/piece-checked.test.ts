import { describe, expect, it } from 'vitest';
import { pieceChecked } from '../../src/entries/piece-checked.ts';
import { deciding, piece } from './views.ts';

describe('piece_checked', () => {
  const decides = deciding(pieceChecked);

  it('is refused for a piece that has gone home', () => {
    expect(decides({ piece: piece({ gone: true }) })).toBe('piece_is_gone');
  });
});
