import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { base64, base64url, bytesOfBase64, bytesOfBase64url, concat, equal, hex, textOfUtf8, utf8 } from '../../src/log/bytes.ts';

const anyBytes = fc.uint8Array({ maxLength: 80 });

describe('base64', () => {
  // RFC 4648, section 10.
  it.each([
    ['', ''],
    ['f', 'Zg=='],
    ['fo', 'Zm8='],
    ['foo', 'Zm9v'],
    ['foob', 'Zm9vYg=='],
    ['fooba', 'Zm9vYmE='],
    ['foobar', 'Zm9vYmFy'],
  ])('writes and reads %j', (text, encoded) => {
    expect(base64(utf8(text))).toBe(encoded);
    expect(bytesOfBase64(encoded)).toEqual(utf8(text));
  });
  it('agrees with Node in both alphabets', () => {
    fc.assert(
      fc.property(anyBytes, (bytes) => {
        expect(base64(bytes)).toBe(Buffer.from(bytes).toString('base64'));
        expect(base64url(bytes)).toBe(Buffer.from(bytes).toString('base64url'));
        expect(bytesOfBase64(base64(bytes))).toEqual(bytes);
        expect(bytesOfBase64url(base64url(bytes))).toEqual(bytes);
      }),
    );
  });
  // RFC 4648, sections 3.2 (padding), 3.3 (other characters), 3.5 (bits after the last byte must be zero); Node reads all of these.
  it.each(['TR==', 'TQ', 'TQ=', 'TQ===', 'T Q==', 'TQ==\n', 'T', '-_8=', 'Zm9v=', '=', 'é', 'TQ==TQ=='])('refuses %j', (text) =>
    expect(bytesOfBase64(text)).toBeNull(),
  );
  it.each(['TR', 'TQ==', 'T', '+/8', 'T.', ' TQ'])('refuses %j as base64url', (text) => expect(bytesOfBase64url(text)).toBeNull());
  it('reads no text but the one it writes', () => {
    fc.assert(
      fc.property(fc.stringMatching(/^[A-Za-z0-9_-]{0,9}$/), (text) => {
        const bytes = bytesOfBase64url(text);
        expect(bytes === null ? text : Buffer.from(bytes).toString('base64url')).toBe(text);
        expect(bytes !== null).toBe(Buffer.from(text, 'base64url').toString('base64url') === text);
      }),
    );
  });
});

describe('UTF-8', () => {
  // RFC 3629, section 10 (overlong forms) and section 3 (surrogates, above U+10FFFF).
  it.each(['c080', 'eda080', 'f4908080', 'ff', 'e282', 'c3'])('refuses the bytes %s', (digits) =>
    expect(textOfUtf8(Buffer.from(digits, 'hex'))).toBeNull(),
  );
  it('keeps a byte order mark in the text, so that no bytes are lost', () =>
    expect(textOfUtf8(Uint8Array.of(0xef, 0xbb, 0xbf, 0x31))).toBe('\ufeff1'));
});

it('hexadecimal, joining and comparing agree with Node', () => {
  fc.assert(
    fc.property(anyBytes, anyBytes, (a, b) => {
      expect(hex(a)).toBe(Buffer.from(a).toString('hex'));
      expect(hex(concat(a, b))).toBe(Buffer.concat([a, b]).toString('hex'));
      expect(equal(a, b)).toBe(Buffer.from(a).equals(b));
      expect(equal(a, Uint8Array.from(a))).toBe(true);
    }),
  );
});
