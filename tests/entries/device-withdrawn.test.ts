import { describe, expect, it } from 'vitest';
import { deviceWithdrawn } from '../../src/entries/device-withdrawn.ts';
import { THINGS } from '../vectors/samples.ts';
import { deciding } from './views.ts';

describe('device_withdrawn', () => {
  const decides = deciding(deviceWithdrawn);
  const shop = (says: Readonly<Record<string, string>>) => ({ shop: { kind: 'shop', id: THINGS.shop, says } as const });

  it('is refused of a device that was never enrolled, or was withdrawn', () => {
    expect(decides(shop({}))).toBe('not_enrolled');
    expect(decides(shop({ 'device:dev-1': '' }))).toBe('not_enrolled');
    expect(decides(shop({ 'device:dev-1': 'Counter' }))).toBeNull();
  });
});
