import { describe, expect, it } from 'vitest';
import { workAgreed } from '../../src/entries/work-agreed.ts';
import { day, SAMPLES, THINGS } from '../vectors/samples.ts';
import { deciding, job, stamp } from './views.ts';

describe('work_agreed', () => {
  const decides = deciding(workAgreed);

  it('is refused on a job that is closed', () => {
    expect(decides({ job: job({ status: 'closed' }) })).toBe('job_is_closed');
  });
  it('is refused when no work is named', () => {
    expect(decides({}, { steps: [] })).toBe('no_work_named');
  });
  it('is refused when work free of charge has a price', () => {
    expect(decides({}, { priceKind: 'free' })).toBe('free_has_a_price');
  });
  it('is refused without a price', () => {
    expect(decides({}, { price: undefined })).toBe('price_missing');
  });
  it('is refused with a promise for yesterday', () => {
    expect(decides({}, { promise: day('2026-12-07') })).toBe('promise_is_past');
  });
  it('takes a promise for today, and work free of charge without a price', () => {
    expect(decides({}, { promise: day('2026-12-08'), priceKind: 'free', price: undefined })).toBeNull();
  });
  it('may be agreed anew on a job that is finished', () => {
    expect(decides({ job: job({ status: 'finished' }) })).toBeNull();
  });
  it.each([
    ['customer', 'customer'],
    ['shop', 'shop'],
    ['credit', 'shop'],
  ] as const)('makes dust and cut metal under the term %s the property of: %s', (term, owner) => {
    const facts = workAgreed.facts({ ...SAMPLES.work_agreed, dust: term, cutMetal: term }, stamp);
    for (const part of ['dust', 'cut metal']) expect(facts).toContainEqual({ fact: 'title', of: THINGS.job, part, owner });
  });
});
