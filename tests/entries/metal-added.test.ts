import { describe, expect, it } from 'vitest';
import { metalAdded } from '../../src/entries/metal-added.ts';
import { massNg } from '../../src/units/mass.ts';
import { SAMPLES, THINGS, weighed } from '../vectors/samples.ts';
import { asking, deciding, packet, piece, stamp, stock } from './views.ts';

describe('metal_added', () => {
  const decides = deciding(metalAdded);

  it('is refused for a piece that has gone home', () => {
    expect(decides({ piece: piece({ gone: true }) })).toBe('piece_is_gone');
  });
  it('is refused before the work is agreed', () => {
    expect(decides({ piece: piece({ jobStatus: 'open' }) })).toBe('work_not_agreed');
  });
  it('is refused with two sources', () => {
    expect(decides({}, { packet: THINGS.oldParts })).toBe('one_source');
  });
  it('is refused with none', () => {
    expect(decides({}, { stock: undefined })).toBe('one_source');
  });
  it('is refused from a packet that has gone home', () => {
    expect(decides({ packet: packet({ gone: true }) }, { stock: undefined, packet: THINGS.oldParts })).toBe('thing_is_gone');
  });
  it('is refused from metal whose hold ends tomorrow', () => {
    expect(decides({ stock: stock({ holds: ['until 2026-12-09'] }) })).toBe('on_hold');
  });
  it('takes metal whose hold ends today', () => {
    expect(decides({ stock: stock({ holds: ['until 2026-12-08'] }) })).toBeNull();
  });
  it('is refused from metal under a dispute', () => {
    expect(decides({ stock: stock({ holds: ['dispute'] }) })).toBe('on_hold');
  });
  it('asks for a second reading when more is added than the stock is expected to hold', () => {
    const asks = asking(metalAdded);
    expect(asks({}, { weight: weighed('5.18') })).toBe('added_exceeds_source');
    expect(asks({}, { weight: weighed('5.17') })).toBeNull();
    expect(asks({ stock: stock({ expected: { unknownSince: 7 } }) }, { weight: weighed('9') })).toBeNull();
  });
  it('asks the same of the customer’s own packet, and nothing where the metal was not weighed', () => {
    const own = { stock: undefined, packet: packet({ expected: { ng: weighed('0.90').ng } }) };
    expect(asking(metalAdded)(own, { stock: undefined, packet: THINGS.oldParts })).toBe('added_exceeds_source');
    expect(asking(metalAdded)({ stock: stock({ expected: { ng: massNg(-1) } }) }, { weight: undefined })).toBeNull();
  });
  it('moves the customer’s own gold out of their packet', () => {
    const { stock: _stock, ...said } = SAMPLES.metal_added;
    const facts = metalAdded.facts({ ...said, packet: THINGS.oldParts }, stamp);
    expect(facts).toMatchObject([{ fact: 'flow', from: THINGS.oldParts, to: THINGS.ring }]);
  });
});
