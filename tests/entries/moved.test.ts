import { describe, expect, it } from 'vitest';
import { moved } from '../../src/entries/moved.ts';
import { deciding, packet } from './views.ts';

describe('moved', () => {
  const decides = deciding(moved);

  it('is refused for a packet that has gone home', () => {
    expect(decides({ of: packet({ gone: true }) })).toBe('thing_is_gone');
  });
});
