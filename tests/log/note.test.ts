import { describe, expect, it } from 'vitest';
import { base64, bytesOfBase64, concat, utf8 } from '../../src/log/bytes.ts';
import { formatCheckpoint, openCheckpoint, parseCheckpoint } from '../../src/log/checkpoint.ts';
import { isGoodPublicKey } from '../../src/log/ed25519.ts';
import {
  cosignatureLine,
  formatNote,
  formatVerifierKey,
  type KeyType,
  openNote,
  parseVerifierKey,
  readNote,
  signatureLine,
  signNote,
  type VerifierKey,
  verifierKey,
} from '../../src/log/note.ts';
import { nobleSmallOrder, nobleVerify, ofHex, plainVerify, publicOf, sha256, signerOf, strictVerify } from './crypto.ts';

const seedOf = (name: string) => sha256(utf8(`seed of ${name}`));
function read<T extends object>(value: T): Exclude<T, { readonly refused: string }> {
  if ('refused' in value) throw new Error(String(value.refused));
  return value as Exclude<T, { readonly refused: string }>;
}
function keyOf<Type extends KeyType>(name: string, type: Type): VerifierKey<Type> {
  return read(verifierKey(sha256, name, type, publicOf(seedOf(name)))) as VerifierKey<Type>;
}
const code = (outcome: object): unknown => ('refused' in outcome ? outcome.refused : 'accepted');

const SHOP = 'lemel/0123456789abcdefghjkmnpqrs/0';
const shop = keyOf(SHOP, 1);
const witness = keyOf('witness.example/w1', 4);
const signShop = signerOf(seedOf(SHOP));
const signWitness = signerOf(seedOf('witness.example/w1'));
const text = formatCheckpoint({ origin: SHOP, size: 7, root: sha256(utf8('root')) });
const note = signNote(text, shop, signShop);
const shopLine = note.slice(text.length + 1);
const witnessLine = cosignatureLine(text, witness, 1_780_000_000, signWitness);

describe('a public key', () => {
  // First the eight points of small order: Chalkias, Garillot, Nikolaenko, Taming the many EdDSAs (ePrint 2020/1244), table 5; then the
  // encodings of them that RFC 8032, section 5.1.3, does not allow (a sign bit where x = 0, y + p), which noble decodes to the same points.
  const smallOrder = [
    '0100000000000000000000000000000000000000000000000000000000000000',
    'ecffffffffffffffffffffffffffffffffffffffffffffffffffffffffffff7f',
    '0000000000000000000000000000000000000000000000000000000000000000',
    '0000000000000000000000000000000000000000000000000000000000000080',
    '26e8958fc2b227b045c3f489f2ef98f0d5dfac05d3c63339b13802886d53fc05',
    '26e8958fc2b227b045c3f489f2ef98f0d5dfac05d3c63339b13802886d53fc85',
    'c7176a703d4dd84fba3c0b760d10670f2a2053fa2c39ccc64ec7fd7792ac037a',
    'c7176a703d4dd84fba3c0b760d10670f2a2053fa2c39ccc64ec7fd7792ac03fa',
    '0100000000000000000000000000000000000000000000000000000000000080',
    'ecffffffffffffffffffffffffffffffffffffffffffffffffffffffffffffff',
    'eeffffffffffffffffffffffffffffffffffffffffffffffffffffffffffff7f',
    'eeffffffffffffffffffffffffffffffffffffffffffffffffffffffffffffff',
    'edffffffffffffffffffffffffffffffffffffffffffffffffffffffffffff7f',
    'edffffffffffffffffffffffffffffffffffffffffffffffffffffffffffffff',
  ].map(ofHex);
  it.each(smallOrder)('of small order is refused: %#', (key) => {
    expect(nobleSmallOrder(key)).toBe(true);
    expect(isGoodPublicKey(key)).toBe(false);
    expect(code(verifierKey(sha256, SHOP, 1, key))).toBe('weak_key');
  });
  it('of small order would accept what nobody signed, which is why', () => {
    const [identity = new Uint8Array()] = smallOrder;
    expect(plainVerify(identity, utf8('anything'), concat(identity, new Uint8Array(32)))).toBe(true);
    expect(strictVerify(identity, utf8('anything'), concat(identity, new Uint8Array(32)))).toBe(false);
  });
  it('with y not below 2^255 - 19 is refused, whatever the sign bit (RFC 8032, section 5.1.3)', () => {
    const withFirst = (first: number, last: number) =>
      Uint8Array.from({ length: 32 }, (_, i) => (i === 0 ? first : i === 31 ? last : 0xff));
    for (let first = 0xed; first <= 0xff; first++) {
      expect(isGoodPublicKey(withFirst(first, 0x7f))).toBe(false);
      expect(isGoodPublicKey(withFirst(first, 0xff))).toBe(false);
    }
    expect(isGoodPublicKey(withFirst(0xeb, 0x7f))).toBe(true);
  });
  it.each(['', 'two words', 'a+b', 'a\nb', 'a\ud800'])('has a name, not %j', (name) =>
    expect(code(verifierKey(sha256, name, 1, shop.publicKey))).toBe('bad_key'),
  );
  it('is compared with 2^255 - 19 from its last byte, which is the highest', () => {
    expect(isGoodPublicKey(Uint8Array.from({ length: 32 }, (_, i) => (i === 0 ? 0xee : i === 31 ? 1 : 0)))).toBe(true);
  });
  it('of 31 or 33 bytes is refused', () => {
    expect(isGoodPublicKey(shop.publicKey.subarray(1))).toBe(false);
    expect(isGoodPublicKey(concat(shop.publicKey, Uint8Array.of(0)))).toBe(false);
  });
});

describe('a verifier key', () => {
  const vkey = formatVerifierKey(shop);
  const [, id = '', encoded = ''] = vkey.split('+', 3);
  it('is read back', () => expect(parseVerifierKey(sha256, vkey, 1)).toEqual(shop));
  it.each([
    ['bad_key', vkey.slice(0, -1)],
    ['bad_key', `${vkey}=`],
    ['bad_key', vkey.replace('+', ' ')],
    ['bad_key', `+${id}+${encoded}`],
    ['bad_key', ` ${vkey}`],
    ['bad_key', `${vkey}\n`],
    ['bad_key', `\ud800+${id}+${encoded}`],
    ['bad_key', `two words+${id}+${encoded}`],
    ['bad_key', vkey.replace(id, id.toUpperCase().padEnd(9, 'A'))],
    ['wrong_key_id', vkey.replace(id, '00000000')],
    ['wrong_key_id', vkey.replace(SHOP, 'lemel/other/0')],
    ['weak_key', `x+00000000+${base64(concat(Uint8Array.of(1, 1), new Uint8Array(31)))}`],
    ['other_key_type', formatVerifierKey(witness)],
    ['other_key_type', `x+00000000+${base64(concat(Uint8Array.of(2), shop.publicKey))}`],
  ])('is refused: %s', (refused, changed) => expect(code(parseVerifierKey(sha256, changed, 1))).toBe(refused));
});

describe('a note', () => {
  it('opens with a known key and passes over the others', () => {
    const both = formatNote(text, [witnessLine, shopLine]);
    expect(openNote(both, [shop], strictVerify)).toMatchObject({ text, signedBy: [{ key: shop }] });
    expect(openNote(both, [shop, witness], strictVerify)).toMatchObject({
      text,
      signedBy: [{ key: witness, atSeconds: 1_780_000_000 }, { key: shop }],
    });
  });
  it('is signed the same by another implementation', () => expect(openNote(note, [shop], nobleVerify)).toMatchObject({ text }));
  it('may be an empty line', () => expect(openNote(signNote('\n', shop, signShop), [shop], strictVerify)).toMatchObject({ text: '\n' }));
  it('passes over a signature of one byte by somebody unknown', () =>
    expect(code(openNote(`${note}\u2014 x AAAAAAA=\n`, [shop], strictVerify))).toBe('accepted'));
  it('may hold empty lines; the last one divides', () => {
    const long = signNote('a\n\nb\n', shop, signShop);
    expect(openNote(long, [shop], strictVerify)).toMatchObject({ text: 'a\n\nb\n' });
  });
  it('can be verified by whoever must wait for it', async () => {
    const outcomes = await Promise.all(
      read(readNote(note, [shop])).signatures.map(async ({ key, message, signature }) => {
        const imported = await crypto.subtle.importKey('raw', key.publicKey, 'Ed25519', false, ['verify']);
        return crypto.subtle.verify('Ed25519', imported, signature, message);
      }),
    );
    expect(outcomes).toEqual([true]);
  });
  it.each([
    ['malformed', note.replaceAll('\n', '\r\n')],
    ['malformed', note.slice(0, -1)],
    ['malformed', text],
    ['malformed', `${text}\n`],
    ['malformed', note.replace('\u2014', '-')],
    ['malformed', note.replace('\u2014 ', '\u2014  ')],
    ['malformed', note.replace(/.\n$/, '\n')],
    ['malformed', `${note}\u2014 x AAAAAA==\n`],
    ['malformed', `${note}x${shopLine}`],
    ['malformed', `${note}${shopLine.slice(0, -1)} x\n`],
    ['malformed', `${note}\u2014  AAAAAAA=\n`],
    ['malformed', `\n${note.slice(text.length + 1)}`],
    ['malformed', `\n\n${shopLine}x`],
    ['malformed', shopLine],
    ['malformed', `${note}${shopLine.replace(SHOP, 'two\u00a0words')}`],
    ['malformed', `\u0000${note}`],
    ['malformed', `\ud800${note}`],
    ['too_large', `${'a'.repeat(1_000_000)}${note}`],
    ['too_many_signatures', `${note}${shopLine.repeat(100)}`],
    ['no_known_signature', formatNote(text, [witnessLine])],
    ['no_known_signature', note.replace(`\u2014 ${SHOP}`, '\u2014 lemel/other/0')],
    ['no_known_signature', formatNote(text, [signatureLine({ ...shop, id: '00000000' }, signShop(utf8(text)))])],
    ['bad_signature', note.replace('\n7\n', '\n8\n')],
    ['bad_signature', `${note}${signatureLine(shop, signShop(utf8('other\n')))}`],
  ])('is refused: %s', (refused, changed) => expect(code(openNote(changed, [shop], strictVerify))).toBe(refused));
  it('counts each signer once, however often and however differently its lines stand there', () => {
    const later = cosignatureLine(text, witness, 1_780_000_060, signWitness);
    const often = formatNote(text, [witnessLine, witnessLine, shopLine, later, shopLine, witnessLine]);
    expect(openNote(often, [shop, witness, { ...witness }], strictVerify)).toMatchObject({
      signedBy: [{ key: witness, atSeconds: 1_780_000_000 }, { key: shop }],
    });
    expect(read(readNote(often, [shop, witness])).signatures.map(({ atSeconds }) => atSeconds)).toEqual([
      1_780_000_000,
      undefined,
      1_780_000_060,
    ]);
  });
  it('still verifies a second, other signature of a signer it has counted', () =>
    expect(code(openNote(`${note}${signatureLine(shop, signShop(utf8('other\n')))}`, [shop], strictVerify))).toBe('bad_signature'));
  it('may have a million bytes and a name of any length but none', () => {
    const filled = (bytes: number) => signNote(`${'a'.repeat(bytes - signNote('\n', shop, signShop).length)}\n`, shop, signShop);
    expect(filled(1_000_000)).toHaveLength(1_000_000);
    expect(code(openNote(filled(1_000_000), [shop], strictVerify))).toBe('accepted');
    expect(code(openNote(filled(1_000_001), [shop], strictVerify))).toBe('too_large');
  });
  it('takes a hundred signatures, all of which are verified', () =>
    expect(openNote(`${note}${shopLine.repeat(99)}`, [shop], strictVerify)).toHaveProperty('text'));
  it('with a signature of another length is refused before anything is verified', () => {
    expect(code(readNote(formatNote(text, [signatureLine(shop, new Uint8Array(63))]), [shop]))).toBe('bad_signature');
    expect(code(readNote(formatNote(text, [signatureLine(witness, new Uint8Array(64))]), [witness]))).toBe('bad_signature');
  });
  it('of a text that could not be read back is never written', () => {
    for (const bad of ['no newline', 'a\r\n', 'a\u0000\n', '\ud800\n', ''])
      expect(() => signNote(bad, shop, signShop)).toThrow('text of a note');
  });
});

describe('a checkpoint', () => {
  const keys = { log: [shop], witnesses: [witness] };
  const open = (signed: string, origin = SHOP) => openCheckpoint(signed, origin, keys, strictVerify);
  const signed = (body: string) => signNote(body, shop, signShop);
  it('opens with the times of its witnesses', () =>
    expect(open(formatNote(text, [shopLine, witnessLine]))).toMatchObject({
      origin: SHOP,
      size: 7,
      witnessed: [{ name: 'witness.example/w1', atSeconds: 1_780_000_000 }],
    }));
  it('names a witness of two keys once', () => {
    const renewed = read(verifierKey(sha256, 'witness.example/w1', 4, publicOf(seedOf('renewed'))));
    const twice = formatNote(text, [shopLine, witnessLine, cosignatureLine(text, renewed, 1_780_000_500, signerOf(seedOf('renewed')))]);
    const opened = openCheckpoint(twice, SHOP, { log: [shop], witnesses: [witness, renewed] }, strictVerify);
    expect(opened).toMatchObject({ witnessed: [{ name: 'witness.example/w1', atSeconds: 1_780_000_000 }] });
    expect('witnessed' in opened && opened.witnessed).toHaveLength(1);
  });
  it('may be signed by one of several keys of the log, among several signers', () => {
    const older = keyOf('lemel/0123456789abcdefghjkmnpqrs/1', 1);
    expect(openCheckpoint(formatNote(text, [witnessLine, shopLine]), SHOP, { ...keys, log: [older, shop] }, strictVerify)).toMatchObject({
      size: 7,
    });
  });
  it.each([
    ['not_signed_by_log', formatNote(text, [witnessLine])],
    ['no_known_signature', signNote(text, keyOf('lemel/other/0', 1), signerOf(seedOf('lemel/other/0')))],
    ['other_origin', signed(text.replace(SHOP, 'lemel/other/0'))],
    ['bad_size', signed(text.replace('\n7\n', '\n07\n'))],
    ['bad_size', signed(text.replace('\n7\n', '\n9007199254740992\n'))],
    ['bad_root', signed(`${SHOP}\n7\n${base64(new Uint8Array(31))}\n`)],
    ['not_checkpoint', signed(`${text}extension\n`)],
    ['not_checkpoint', signed('a\n7\n')],
  ])('is refused: %s', (refused, changed) => expect(code(open(changed))).toBe(refused));
  it.each([
    ['not_checkpoint', text.slice(SHOP.length)],
    ['not_checkpoint', text.slice(0, -1)],
    ['not_checkpoint', `${text}x`],
    ['not_checkpoint', `${text}\n`],
    ['not_checkpoint', text.replace(/\n.*\n$/, '\n')],
    ['bad_root', `${SHOP}\n7\nnot base64\n`],
    ['bad_root', `${SHOP}\n7\n\n`],
  ])('is not read: %s %j', (refused, changed) => expect(code(parseCheckpoint(changed))).toBe(refused));
  it('is read back from its text', () => expect(parseCheckpoint(text)).toMatchObject({ origin: SHOP, size: 7 }));
});

it('a cosignature at a time beyond 2^53 - 1, which JavaScript cannot tell from its neighbours, is refused though well signed', () => {
  const tooLate = formatNote(text, [cosignatureLine(text, witness, 2 ** 60, signWitness)]);
  expect(code(openNote(tooLate, [witness], strictVerify))).toBe('bad_signature');
});

it('a cosignature and a signature cannot be shown as each other', () => {
  const signature = (line: string) => (bytesOfBase64(line.split(' ')[2]?.trim() ?? '') ?? new Uint8Array()).subarray(4);
  // The same name and public key, as each of the two types.
  const asLog = keyOf('witness.example/w1', 1);
  const shownAsSignature = formatNote(text, [signatureLine(asLog, signature(witnessLine).subarray(8))]);
  expect(code(openNote(shownAsSignature, [asLog, witness], strictVerify))).toBe('bad_signature');
  const plain = signWitness(utf8(text));
  const shownAsCosignature = formatNote(text, [signatureLine(witness, concat(new Uint8Array(8), plain))]);
  expect(code(openNote(shownAsCosignature, [asLog, witness], strictVerify))).toBe('bad_signature');
  expect(code(openNote(formatNote(text, [witnessLine]), [asLog], strictVerify))).toBe('no_known_signature');
});
