import { describe, expect, it } from 'vitest';
import { pieceCleaned } from '../../src/entries/piece-cleaned.ts';
import { SAMPLES, THINGS } from '../vectors/samples.ts';
import { deciding, piece, stamp } from './views.ts';

describe('piece_cleaned', () => {
  const decides = deciding(pieceCleaned);

  it('is refused for a piece that has gone home', () => {
    expect(decides({ piece: piece({ gone: true }) })).toBe('piece_is_gone');
  });
  it('gives a base weight only where the piece is dry', () => {
    const said = SAMPLES.piece_cleaned;
    const reading = said.weight;
    expect(pieceCleaned.facts(said, stamp)).toEqual([{ fact: 'reading', of: THINGS.ring, state: 'cleaned and dry', reading }]);
    expect(pieceCleaned.facts({ ...said, dry: 'unsure' }, stamp)).toEqual([
      { fact: 'reading', of: THINGS.ring, state: 'cleaned', reading },
    ]);
  });
});
