import { describe, expect, it } from 'vitest';
import { filingsGathered } from '../../src/entries/filings-gathered.ts';
import { SAMPLES, THINGS, weighed } from '../vectors/samples.ts';
import { asking, deciding, lot, packet, piece, stamp } from './views.ts';

describe('filings_gathered', () => {
  const decides = deciding(filingsGathered);

  it('is refused for a piece that has gone home, and before work was agreed', () => {
    expect(decides({ piece: piece({ gone: true }) })).toBe('piece_is_gone');
    expect(decides({ piece: piece({ jobStatus: 'open' }) })).toBe('work_not_agreed');
  });
  it('is refused into nothing, into two places and into a sealed lot', () => {
    expect(decides({}, { lot: undefined })).toBe('one_destination');
    expect(decides({}, { packet: THINGS.oldParts })).toBe('one_destination');
    expect(decides({ lot: lot({ status: 'sealed' }) })).toBe('lot_is_sealed');
    const view = { lot: undefined, packet: packet({ gone: true }) };
    expect(decides(view, { lot: undefined, packet: THINGS.oldParts })).toBe('thing_is_gone');
  });
  it('asks about filings that weigh more than the piece', () => {
    const asks = asking(filingsGathered);
    expect(asks({}, { weight: weighed('5.18') })).toBe('filings_exceed_piece');
    expect(asks({}, { weight: weighed('5.17') })).toBeNull();
    expect(asks({ piece: piece({ expected: { unknownSince: 7 } }) }, { weight: weighed('6.00') })).toBeNull();
    expect(asks({}, { weight: { ...weighed('6.00'), onPan: [{ thing: 'dish' }] } })).toBeNull();
  });
  it('takes them from the piece, so that they are no loss of the job', () => {
    const { metal, weight } = SAMPLES.filings_gathered;
    const flow = { fact: 'flow', from: THINGS.ring, to: THINGS.lot, matter: { kind: 'metal', metal }, reading: weight };
    expect(filingsGathered.facts(SAMPLES.filings_gathered, stamp)).toEqual([flow]);
  });
});
