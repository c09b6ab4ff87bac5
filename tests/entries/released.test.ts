import { describe, expect, it } from 'vitest';
import { released } from '../../src/entries/released.ts';
import { SAMPLES, THINGS } from '../vectors/samples.ts';
import { deciding, lot, piece, stamp } from './views.ts';

describe('released', () => {
  const decides = deciding(released);

  it('is refused for a piece that has gone home', () => {
    expect(decides({ of: piece({ gone: true }) })).toBe('thing_is_gone');
  });
  it('is refused while a hold stands', () => {
    expect(decides({ of: piece({ holds: ['dispute'] }) })).toBe('on_hold');
  });
  it('is refused to somebody in the shop and somebody outside at once', () => {
    expect(decides({}, { person: THINGS.setter })).toBe('one_taker');
  });
  it('is refused for metal whose hold ends on a day to come', () => {
    expect(decides({ of: lot({ holds: ['until 2026-12-09'] }) })).toBe('on_hold');
  });
  it('goes out when the hold has ended', () => {
    expect(decides({ of: lot({ holds: ['until 2026-12-08'] }) })).toBeNull();
  });
  it('tells a customer of a delivery that it comes to them, and of all else what it is for', () => {
    if (typeof released.tell !== 'function') throw new Error('tells nothing of its own');
    const { tell } = released;
    expect(tell({ ...SAMPLES.released, purpose: 'delivery' })).toContain('to you');
    expect(tell({ ...SAMPLES.released, purpose: 'setting' })).toMatch(/: setting$/);
  });
  it('is offered to the outside where nobody in the shop takes it', () => {
    expect(released.facts(SAMPLES.released, stamp)[0]).toEqual({ fact: 'custody', of: THINGS.ring, is: 'offered to', holder: 'outside' });
  });
});
