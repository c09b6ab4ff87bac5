import { describe, expect, it } from 'vitest';
import { markRead } from '../../src/entries/mark-read.ts';
import { nameOf, SAMPLES } from '../vectors/samples.ts';
import { deciding, piece } from './views.ts';

describe('mark_read', () => {
  const decides = deciding(markRead);

  it('is refused for a piece that has gone home', () => {
    expect(decides({ piece: piece({ gone: true }) })).toBe('piece_is_gone');
  });
  it('is refused when a mark that cannot be read has letters', () => {
    expect(decides({}, { legible: 'illegible' })).toBe('illegible_but_read');
  });
  it('is refused when a mark that reads has none', () => {
    expect(decides({}, { struck: undefined })).toBe('mark_missing');
  });
  it('says of a worn mark that it is worn, and of no other', () => {
    const said = (['clear', 'worn'] as const).map((legible) => markRead.say({ ...SAMPLES.mark_read, legible }, nameOf));
    expect(said.map((words) => words.includes('worn'))).toEqual([false, true]);
  });
  it('takes a mark that cannot be read without letters', () => {
    expect(decides({}, { struck: undefined, legible: 'illegible' })).toBeNull();
  });
});
