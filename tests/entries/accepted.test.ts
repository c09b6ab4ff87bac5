import { describe, expect, it } from 'vitest';
import { accepted } from '../../src/entries/accepted.ts';
import { SAMPLES, THINGS } from '../vectors/samples.ts';
import { deciding, piece, stamp } from './views.ts';

describe('accepted', () => {
  const decides = deciding(accepted);

  it('is refused for a piece that has gone home', () => {
    expect(decides({ of: piece({ gone: true }) })).toBe('thing_is_gone');
  });
  it('is refused when neither the writer nor the witness is the taker', () => {
    expect(decides({}, {}, { witness: THINGS.owner })).toBe('not_the_taker');
  });
  it('is refused when fewer things are here than were handed over', () => {
    expect(decides({ of: piece({ says: { released: '5' } }) }, { count: 4 })).toBe('count_differs');
    expect(decides({ of: piece({ says: { released: '5' } }) }, { count: 5 })).toBeNull();
  });
  it('is refused under another seal than it left with', () => {
    expect(decides({ of: piece({ says: { seal: 'S 10443' } }) })).toBe('another_seal');
  });
  it('is refused under a broken seal until what is in it was counted', () => {
    expect(decides({}, { sealState: 'broken', seal: undefined, count: undefined })).toBe('opened_not_counted');
    expect(decides({}, { sealState: 'broken', seal: undefined, count: 1 })).toBeNull();
  });
  it('takes what was not counted or sealed as it went, and reads no seal where there is none', () => {
    expect(decides({ of: piece({ says: { seal: 'S 10442', released: '1' } }) })).toBeNull();
    expect(decides({ of: piece({ says: { seal: 'S 10442', released: '5' } }) }, { count: undefined })).toBeNull();
    expect(decides({ of: piece({ says: { seal: 'S 10442' } }) }, { sealState: 'none', seal: undefined })).toBeNull();
    expect(decides({}, { count: undefined, seal: undefined, sealState: 'intact' })).toBeNull();
  });
  it('takes another seal where it is said that its own was broken and what is in it was counted', () => {
    expect(decides({ of: piece({ says: { seal: 'S 10443' } }) }, { sealState: 'broken' })).toBeNull();
  });
  it('is taken from the writer as well as from the witness', () => {
    expect(decides({}, { taker: THINGS.owner })).toBeNull();
  });
  it('is taken from somebody outside, by what they signed', () => {
    expect(decides({}, { taker: undefined, evidence: 'sheet' })).toBeNull();
  });
  it('makes the outside answer where nobody in the shop takes it', () => {
    const { taker: _nobody, ...said } = SAMPLES.accepted;
    expect(accepted.facts(said, stamp)[0]).toEqual({ fact: 'custody', of: THINGS.ring, is: 'with', holder: 'outside' });
  });
});
