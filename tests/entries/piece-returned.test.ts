import { describe, expect, it } from 'vitest';
import { pieceReturned } from '../../src/entries/piece-returned.ts';
import { SAMPLES, THINGS } from '../vectors/samples.ts';
import { deciding, piece, stamp } from './views.ts';

describe('piece_returned', () => {
  const decides = deciding(pieceReturned);

  it('is refused for a piece that has gone home', () => {
    expect(decides({ piece: piece({ gone: true }) })).toBe('piece_is_gone');
  });
  it('is refused while the piece is with somebody outside, or on its way there but by this very post', () => {
    const finished = { jobStatus: 'finished', offeredTo: 'outside' } as const;
    expect(decides({ piece: piece({ ...finished, holder: 'outside' }) }, { to: 'post' })).toBe('piece_is_outside');
    expect(decides({ piece: piece(finished) })).toBe('piece_is_outside');
    expect(decides({ piece: piece(finished) }, { to: 'post' })).toBeNull();
  });
  it('is refused while it is disputed whose it is', () => {
    expect(decides({ piece: piece({ jobStatus: 'finished', owner: 'disputed' }) })).toBe('owner_disputed');
  });
  it('is refused when the last check found its seats not all tight', () => {
    expect(decides({ piece: piece({ jobStatus: 'finished', says: { seats: 'loose' } }) })).toBe('seats_not_tight');
    expect(decides({ piece: piece({ jobStatus: 'finished', says: { seats: 'tight' } }) })).toBeNull();
  });
  it('is refused while a hold stands', () => {
    expect(decides({ piece: piece({ holds: ['dispute'] }) })).toBe('on_hold');
  });
  it('is refused before the work is finished', () => {
    expect(decides({ piece: piece() })).toBe('work_not_finished');
  });
  it('is refused when the stones counted out are not those in it', () => {
    expect(decides({ piece: piece({ jobStatus: 'finished', stonesIn: 4 }) })).toBe('stone_count_differs');
  });
  it('is refused while a stone of the job is out of its piece', () => {
    expect(decides({ piece: piece({ jobStatus: 'finished', stonesOut: 1 }) })).toBe('stones_still_out');
  });
  it('says first that it has gone home, then that it is on hold, then that it is not finished', () => {
    expect(
      [
        { gone: true, holds: ['lien'], stonesIn: 4 },
        { holds: ['lien'], stonesIn: 4 },
        { stonesIn: 4, stonesOut: 1 },
      ].map((over) => decides({ piece: piece(over) })),
    ).toEqual(['piece_is_gone', 'on_hold', 'work_not_finished']);
  });
  it('goes home whose stones were never counted before', () => {
    expect(decides({ piece: piece({ jobStatus: 'finished', stonesIn: null }) })).toBeNull();
  });
  it('leaves a posted piece with the outside, until it is known to have come', () => {
    const facts = pieceReturned.facts({ ...SAMPLES.piece_returned, to: 'post' }, stamp);
    expect(facts).toContainEqual({ fact: 'custody', of: THINGS.ring, is: 'with', holder: 'outside' });
    expect(facts).toContainEqual({ fact: 'flow', from: THINGS.ring, to: 'outside', matter: { kind: 'mixed' }, whole: true });
  });
});
