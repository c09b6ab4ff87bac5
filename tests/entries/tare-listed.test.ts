import { describe, expect, it } from 'vitest';
import { tareListed } from '../../src/entries/tare-listed.ts';
import { massNg } from '../../src/units/mass.ts';
import { SAMPLES, THINGS, weighed } from '../vectors/samples.ts';
import { deciding, stamp } from './views.ts';

describe('tare_listed', () => {
  const decides = deciding(tareListed);

  it('is refused when something of unknown weight was on the pan too', () => {
    expect(decides({}, { weight: { ...weighed('0.21'), onPan: [{ thing: 'dish' }] } })).toBe('tare_is_gross');
  });
  it('keeps the weight without what is known to have been on the pan with it', () => {
    const dish = { thing: 'dish', tareNg: massNg(10_000_000) };
    const said = { ...SAMPLES.tare_listed, weight: { ...weighed('0.21'), onPan: [dish] } };
    expect(tareListed.facts(said, stamp)).toEqual([{ fact: 'policy', of: THINGS.shop, name: 'tare:string tag', says: '200000000' }]);
  });
});
