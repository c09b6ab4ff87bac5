import { describe, expect, it } from 'vitest';
import { balanceCalibrated } from '../../src/entries/balance-calibrated.ts';
import { deciding } from './views.ts';

describe('balance_calibrated', () => {
  const decides = deciding(balanceCalibrated);

  it('is refused with a repeatability and the readings it comes from at once', () => {
    expect(decides({}, { repeatability: '0.004' })).toBe('one_repeatability');
  });
  it('is refused with so few readings that they tell nothing of a spread', () => {
    expect(decides({}, { readings: ['20.00', '20.01'] })).toBe('too_few_readings');
    expect(decides({}, { readings: ['20.00', '20.01', '20.00', '20.01'] })).toBe('too_few_readings');
  });
  it('takes its paper’s repeatability alone, and neither where only the error over the range is known', () => {
    expect(decides({}, { readings: undefined, repeatability: '0.004' })).toBeNull();
    expect(decides({}, { readings: undefined })).toBeNull();
  });
});
