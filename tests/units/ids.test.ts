// Names of things: opaque, and a bag's code catches a slip of the hand.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bagCode, isRef, readBagCode, refFromBytes } from '../../src/units/ids.ts';

const bytes = (length: number) => fc.uint8Array({ minLength: length, maxLength: length });
const LETTERS = '23456789ABCDEFGHJKMNPQRSTVWXY';

describe('a name', () => {
  it('is 26 characters and differs where its bytes differ', () => {
    fc.assert(
      fc.property(bytes(16), bytes(16), (a, b) => {
        const [first, second] = [refFromBytes('job', a), refFromBytes('job', b)];
        expect(isRef('job', first)).toBe(true);
        expect(first === second).toBe(a.every((byte, i) => byte === b[i]));
      }),
    );
  });

  it('needs 16 bytes', () => {
    expect(() => refFromBytes('job', new Uint8Array(15))).toThrow(RangeError);
  });
});

describe('a bag code', () => {
  it('reads back in small letters, with spaces and hyphens', () => {
    fc.assert(
      fc.property(bytes(4), fc.integer({ min: 3, max: 4 }), (random, length) => {
        const code = bagCode(random, length);
        expect(readBagCode(` ${code.toLowerCase().slice(0, 2)}-${code.slice(2)} `)).toBe(code);
        expect(isRef('bag', code)).toBe(true);
      }),
    );
  });

  it('with one wrong character or two neighbours swapped is never taken for another bag', () => {
    fc.assert(
      fc.property(bytes(4), fc.nat({ max: 4 }), fc.constantFrom(...LETTERS), (random, at, letter) => {
        const code = bagCode(random, 4);
        const wrong = code.slice(0, at) + letter + code.slice(at + 1);
        if (wrong !== code) expect(readBagCode(wrong)).toBeNull();
        const swapped = code.slice(0, at) + (code[at + 1] ?? '') + (code[at] ?? '') + code.slice(at + 2);
        if (swapped !== code) expect(readBagCode(swapped)).toBeNull();
      }),
      { numRuns: 2000 },
    );
  });

  it('has no letter that is misread', () => {
    for (const code of ['2I34', '0A22', 'ABCL', '', 'AB']) expect(readBagCode(code)).toBeNull();
  });
});
