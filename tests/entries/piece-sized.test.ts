import { describe, expect, it } from 'vitest';
import { pieceSized } from '../../src/entries/piece-sized.ts';
import { deciding, piece } from './views.ts';

describe('piece_sized', () => {
  const decides = deciding(pieceSized);

  it('is refused for a piece that has gone home', () => {
    expect(decides({ piece: piece({ gone: true }) })).toBe('piece_is_gone');
  });
  it('is refused before the work is agreed', () => {
    expect(decides({ piece: piece({ jobStatus: 'open' }) })).toBe('work_not_agreed');
  });
});
