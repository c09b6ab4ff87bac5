import { describe, expect, it } from 'vitest';
import { weightNotTaken } from '../../src/entries/weight-not-taken.ts';
import { deciding, piece } from './views.ts';

describe('weight_not_taken', () => {
  const decides = deciding(weightNotTaken);

  it('is refused for a piece that has gone home', () => {
    expect(decides({ piece: piece({ gone: true }) })).toBe('piece_is_gone');
  });
});
