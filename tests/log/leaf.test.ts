import { describe, expect, it } from 'vitest';
import { base64url, utf8 } from '../../src/log/bytes.ts';
import { checkSealed, disclosure, disclosureDigest, readLeaf, sealedDigest } from '../../src/log/leaf.ts';
import { sha256 } from './crypto.ts';
import { bytesOf, drafts, objects } from './histories.ts';

const [first = {}, , , shared = {}] = objects(drafts(4));
const code = (outcome: object): unknown => ('refused' in outcome ? outcome.refused : 'accepted');
const without = (name: string) => Object.fromEntries(Object.entries(first).filter(([key]) => key !== name));
const hash = base64url(sha256(utf8('x')));
const link = { s: 'job-1', n: 0, p: 'genesis' };

describe('a leaf', () => {
  it('is read with all its members, and with a witness and sealed fields', () => {
    expect(readLeaf(bytesOf(first))).toEqual({ leaf: first });
    const more = { ...first, witness: 'person-1', sealed: { note: hash } };
    expect(readLeaf(bytesOf(more))).toEqual({ leaf: more });
  });
  it.each([...['session', 'pin', 'password', 'import'].map((auth) => ({ auth })), { at: 253_402_300_799_999 }, { occurredAt: 0 }])(
    'may say %j',
    (change) => expect(code(readLeaf(bytesOf({ ...first, ...change })))).toBe('accepted'),
  );
  it('may have four links', () => {
    const links = ['a', 'b', 'c', 'd'].map((s) => ({ ...link, s }));
    expect(code(readLeaf(bytesOf({ ...first, links })))).toBe('accepted');
    expect(code(readLeaf(bytesOf({ ...first, links: [...links, link] })))).toBe('member_wrong');
  });
  it.each(Object.keys(first))('without %s is refused', (name) => expect(code(readLeaf(bytesOf(without(name))))).toBe('member_missing'));
  it.each([
    ['unknown_version', { v: 2 }],
    ['member_unknown', { id: 'x' }],
    ['member_unknown', { toString: 'x' }],
    ['member_wrong', { v: 0 }],
    ['member_wrong', { v: '1' }],
    ['member_wrong', { v: '2' }],
    ['member_wrong', { seq: '5' }],
    ['member_wrong', { salt: 5 }],
    ['member_wrong', { data: 'x' }],
    ['member_wrong', { sealed: 'x' }],
    ['member_wrong', { sealed: { a: hash, b: 'open' } }],
    ['member_wrong', { sealed: { a: 'open', b: hash } }],
    ['member_wrong', { part: [0, '1'] }],
    ['member_wrong', { links: [link, { ...link, s: 'b', n: -1 }] }],
    ['member_wrong', { log: '' }],
    ['member_wrong', { seq: -1 }],
    ['member_wrong', { type: 1 }],
    ['member_wrong', { ver: 0 }],
    ['member_wrong', { at: -1 }],
    ['member_wrong', { at: 253_402_300_800_000 }],
    ['member_wrong', { occurredAt: '2026-12-08' }],
    ['member_wrong', { by: ['person-0'] }],
    ['member_wrong', { auth: 'owner' }],
    ['member_wrong', { witness: '' }],
    ['member_wrong', { device: true }],
    ['member_wrong', { command: '' }],
    ['member_wrong', { part: [1, 1] }],
    ['member_wrong', { part: [0, 1, 1] }],
    ['member_wrong', { part: [-1, 1] }],
    ['member_wrong', { links: [] }],
    ['member_wrong', { links: [link, { ...link }] }],
    ['member_wrong', { links: [{ s: 'job-1', n: 0, p: hash }] }],
    ['member_wrong', { links: [{ s: 'job-1', n: 1, p: 'genesis' }] }],
    ['member_wrong', { links: [{ s: 'job-1', n: 1, p: hash.slice(1) }] }],
    ['member_wrong', { links: [{ s: '', n: 0, p: 'genesis' }] }],
    ['member_wrong', { links: [{ n: 0, p: 'genesis' }] }],
    ['member_wrong', { links: [{ ...link, q: 1 }] }],
    ['member_wrong', { salt: 'AAAAAAAAAAAAAAAAAAAAAB' }],
    ['member_wrong', { salt: 'AAAAAAAAAAAAAAAAAAAAA' }],
    ['member_wrong', { data: [] }],
    ['member_wrong', { sealed: { note: 'open' } }],
    ['member_wrong', { sealed: [hash] }],
  ])('is refused: %s %j', (refused, change) => expect(code(readLeaf(bytesOf({ ...first, ...change })))).toBe(refused));
  it('that is no object is refused', () => expect(code(readLeaf(bytesOf([first])))).toBe('member_missing'));
  it('of another spelling is refused before its members are looked at', () =>
    expect(code(readLeaf(utf8(JSON.stringify(shared))))).toBe('not_canonical'));
});

describe('a sealed field', () => {
  const salt = '_26bc4LT-ac6q2KI6cBW5es';
  // RFC 9901, section 4.2.1: the disclosure without white space; section 4.2.3: the digest of the one with spaces.
  it('is disclosed as RFC 9901 writes it without white space', () =>
    expect(disclosure(salt, 'family_name', 'M\u00f6bius')).toBe('WyJfMjZiYzRMVC1hYzZxMktJNmNCVzVlcyIsImZhbWlseV9uYW1lIiwiTcO2Yml1cyJd'));
  it('has the digest of its text', () =>
    expect(disclosureDigest(sha256, 'WyJfMjZiYzRMVC1hYzZxMktJNmNCVzVlcyIsICJmYW1pbHlfbmFtZSIsICJNw7ZiaXVzIl0')).toBe(
      'X9yH0Ajrdm1Oij4tWso9UzzKJvPoDxwmuEcO3XAdRC0',
    ));
  it('is none of a leaf that has no sealed fields', () => {
    const read = readLeaf(bytesOf(first));
    expect('leaf' in read && checkSealed(sha256, read.leaf, salt, 'phone', '0123 456')).toBe(false);
  });
  it('opens with its own salt, name and value only', () => {
    const read = readLeaf(bytesOf({ ...first, sealed: { phone: sealedDigest(sha256, salt, 'phone', '0123 456') } }));
    if ('refused' in read) throw new Error(read.refused);
    const opens = (own: string, name: string, value: string) => checkSealed(sha256, read.leaf, own, name, value);
    expect(opens(salt, 'phone', '0123 456')).toBe(true);
    expect(opens(salt, 'phone', '0123 457')).toBe(false);
    expect(opens(salt, 'name', '0123 456')).toBe(false);
    expect(opens(salt, 'toString', '0123 456')).toBe(false);
    expect(opens('AAAAAAAAAAAAAAAAAAAAAA', 'phone', '0123 456')).toBe(false);
  });
});
