import { describe, expect, it } from 'vitest';
import { returnedWithException } from '../../src/entries/returned-with-exception.ts';
import { deciding, piece } from './views.ts';

describe('returned_with_exception', () => {
  const decides = deciding(returnedWithException);

  it('is refused for a piece that has gone home', () => {
    expect(decides({ piece: piece({ gone: true }) })).toBe('piece_is_gone');
  });
  it('is refused while the piece is with somebody outside', () => {
    expect(decides({ piece: piece({ holder: 'outside' }) })).toBe('piece_is_outside');
  });
  it('is the way out of a dispute that was settled, and of seats that stay loose', () => {
    expect(decides({ piece: piece({ owner: 'disputed', says: { seats: 'loose' } }) })).toBeNull();
  });
  it('is refused while a hold stands', () => {
    expect(decides({ piece: piece({ holds: ['dispute'] }) })).toBe('on_hold');
  });
  it('is taken with a count that differs and a stone out: the customer was told and signed', () => {
    expect(decides({ piece: piece({ stonesOut: 1 }) })).toBeNull();
  });
  it('is taken before the work is finished', () => {
    expect(decides({ piece: piece({ jobStatus: 'open' }) })).toBeNull();
  });
});
