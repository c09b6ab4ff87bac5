import { describe, expect, it } from 'vitest';
import { metalCut } from '../../src/entries/metal-cut.ts';
import { SAMPLES, THINGS, weighed } from '../vectors/samples.ts';
import { asking, deciding, lot, packet, piece, stamp } from './views.ts';

describe('metal_cut', () => {
  const decides = deciding(metalCut);

  it('is refused for a piece that has gone home', () => {
    expect(decides({ piece: piece({ gone: true }) })).toBe('piece_is_gone');
  });
  it('is refused before the work is agreed', () => {
    expect(decides({ piece: piece({ jobStatus: 'open' }) })).toBe('work_not_agreed');
  });
  it('is refused with a lot and a packet at once', () => {
    expect(decides({}, { packet: THINGS.oldParts })).toBe('one_destination');
  });
  it('is refused with neither', () => {
    expect(decides({}, { lot: undefined })).toBe('one_destination');
  });
  it('is refused into a lot that is sealed', () => {
    expect(decides({ lot: lot({ status: 'sealed' }) })).toBe('lot_is_sealed');
  });
  it('is refused into a packet that went home', () => {
    const view = { lot: undefined, packet: packet({ gone: true }) };
    expect(decides(view, { lot: undefined, packet: THINGS.oldParts })).toBe('thing_is_gone');
  });
  it('goes into a packet for the customer', () => {
    expect(decides({ lot: undefined }, { lot: undefined, packet: THINGS.oldParts })).toBeNull();
  });
  it('asks for a second reading when more is cut than the piece weighs', () => {
    const asks = asking(metalCut);
    expect(asks({}, { weight: weighed('5.18') })).toBe('cut_exceeds_piece');
    expect(asks({}, { weight: weighed('5.17') })).toBeNull();
    expect(asks({ piece: piece({ expected: { unknownSince: 7 } }) }, { weight: weighed('50.18') })).toBeNull();
    expect(asks({}, { weight: { ...weighed('5.50'), onPan: [{ thing: 'dish' }] } })).toBeNull();
  });
  it('moves metal that was not weighed without a reading', () => {
    const { weight: _none, ...said } = SAMPLES.metal_cut;
    const matter = { kind: 'metal', metal: 'gold-750' };
    expect(metalCut.facts(said, stamp)).toEqual([{ fact: 'flow', from: THINGS.ring, to: THINGS.lot, matter }]);
  });
});
