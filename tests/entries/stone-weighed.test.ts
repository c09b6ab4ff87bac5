import { describe, expect, it } from 'vitest';
import { stoneWeighed } from '../../src/entries/stone-weighed.ts';
import { deciding, packet, stone } from './views.ts';

describe('stone_weighed', () => {
  const decides = deciding(stoneWeighed);

  it('is refused for a packet that has gone home', () => {
    expect(decides({ of: packet({ gone: true }) })).toBe('thing_is_gone');
  });
  it('is refused for a stone that is set', () => {
    expect(decides({ of: stone({ loose: false }) })).toBe('stone_not_loose');
  });
  it('takes a packet', () => {
    expect(decides({ of: packet() })).toBeNull();
  });
});
