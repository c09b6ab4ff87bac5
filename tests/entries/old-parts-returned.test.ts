import { describe, expect, it } from 'vitest';
import { oldPartsReturned } from '../../src/entries/old-parts-returned.ts';
import { deciding, packet } from './views.ts';

describe('old_parts_returned', () => {
  const decides = deciding(oldPartsReturned);

  it('is refused a second time', () => {
    expect(decides({ packet: packet({ gone: true }) })).toBe('thing_is_gone');
  });
  it('is refused while a hold stands', () => {
    expect(decides({ packet: packet({ holds: ['dispute'] }) })).toBe('on_hold');
  });
});
