import { describe, expect, it } from 'vitest';
import { inspectedBeforeWork } from '../../src/entries/inspected-before-work.ts';
import { deciding, piece } from './views.ts';

describe('inspected_before_work', () => {
  const decides = deciding(inspectedBeforeWork);

  it('is refused for a piece that has gone home', () => {
    expect(decides({ piece: piece({ gone: true }) })).toBe('piece_is_gone');
  });
});
