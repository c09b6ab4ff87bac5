// Steps of 1, 2 or 5 in a decimal place: OIML R 76-1:2006, 3.4.2.
import { describe, expect, it } from 'vitest';
import { balancePutInService } from '../../src/entries/balance-put-in-service.ts';
import { deciding } from './views.ts';

describe('balance_put_in_service', () => {
  const decides = deciding(balancePutInService);

  it('is refused with a largest load beyond a tonne', () => {
    expect(decides({}, { unit: 'ozt', ranges: [{ max: '900000', step: '1' }] })).toBe('load_too_large');
  });
  it('is refused with a step of 3', () => {
    expect(decides({}, { ranges: [{ max: '60', step: '0.003' }] })).toBe('step_not_1_2_5');
  });
  it('is refused with a step of 0.015', () => {
    expect(decides({}, { ranges: [{ max: '60', step: '0.015' }] })).toBe('step_not_1_2_5');
  });
  it('is refused with a largest load of one step', () => {
    expect(decides({}, { ranges: [{ max: '0.01', step: '0.01' }] })).toBe('load_not_above_step');
  });
  it('is refused with the coarse range first', () => {
    expect(
      decides(
        {},
        {
          ranges: [
            { max: '320', step: '0.01' },
            { max: '60', step: '0.001' },
          ],
        },
      ),
    ).toBe('ranges_do_not_rise');
  });
  it.each([
    ['the same load', { max: '60', step: '0.01' }],
    ['the same step', { max: '320', step: '0.001' }],
    ['a smaller load', { max: '50', step: '0.01' }],
  ])('is refused when the second range has %s', (_what, second) => {
    expect(decides({}, { ranges: [{ max: '60', step: '0.001' }, second] })).toBe('ranges_do_not_rise');
  });
  it.each([
    ['load_too_large', { max: '99999999', step: '10' }],
    ['step_not_1_2_5', { max: '320', step: '0.03' }],
    ['load_not_above_step', { max: '500', step: '500' }],
  ])('is refused for one range of two: %s', (code, bad) => {
    expect(decides({}, { unit: 'ozt', ranges: [{ max: '60', step: '0.001' }, bad] })).toBe(code);
    expect(decides({}, { unit: 'ozt', ranges: [bad, { max: '60', step: '0.001' }] })).toBe(code);
  });
  it.each(['verificationStep', 'repeatability'] as const)('is refused with a %s beyond a tonne', (field) => {
    expect(decides({}, { unit: 'ozt', ranges: [{ max: '60', step: '0.001' }], [field]: '99999999' })).toBe('load_too_large');
    expect(decides({}, { unit: 'ozt', ranges: [{ max: '60', step: '0.001' }], [field]: '0.01' })).toBeNull();
  });
  it('takes a second range that rises in load and step', () => {
    const ranges = [
      { max: '60', step: '0.001' },
      { max: '320', step: '0.01' },
    ];
    expect(decides({}, { ranges })).toBeNull();
  });
  it('takes 2 and 5 in any place, and 10 as well as 1', () => {
    expect(['0.002', '0.5', '5', '10'].map((step) => decides({}, { ranges: [{ max: '5000', step }] }))).toEqual([null, null, null, null]);
  });
});
