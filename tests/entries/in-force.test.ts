// What a field names is still here: no entry of a piece, stone or packet that is gone, or into a lot that is sealed, but for those that say so.
import { describe, expect, it } from 'vitest';
import type { Fields } from '../../src/book/entry.ts';
import type { RefKind } from '../../src/units/ids.ts';
import { deciding, lot, packet, piece, sampleOf, stone, table } from './views.ts';

const NOT_HERE: Partial<Record<RefKind, () => { readonly id: string }>> = {
  piece: () => piece({ gone: true }),
  stone: () => stone({ gone: true }),
  packet: () => packet({ gone: true }),
  lot: () => lot({ status: 'sealed' }),
};
/** What may be said of a thing all the same. */
const STILL: Readonly<Record<string, string>> = {
  'note_added about': 'a note is about what was, too',
  'photo_added about': 'so is a photograph',
  'difference_explained of': 'a difference is explained after the lot went',
  'released of lot': 'a sealed lot is what goes to the refinery',
  'accepted of lot': 'and is taken over on the way there',
  'moved of lot': 'and stands somewhere until then',
};
const CASES = table.flatMap(([type, entry]) =>
  Object.entries(entry.fields as Fields).flatMap(([field, { role, kinds }]) =>
    role === 'begins' || role === 'tells' ? [] : kinds.flatMap((kind) => (NOT_HERE[kind] ? [[type, field, kind] as const] : [])),
  ),
);

describe.each(CASES)('%s, %s, a %s that is not here', (type, field, kind) => {
  const entry = table.find(([name]) => name === type)?.[1];
  it('is refused beside its field, or is one of those that may be said', () => {
    if (!entry) throw new Error(type);
    const view = NOT_HERE[kind]?.();
    // Where one of two is chosen, the other is left out.
    const others = Object.keys(entry.fields as Fields).filter(
      (name) => name !== field && ['stone', 'packet', 'lot', 'stock'].includes(name),
    );
    const isOneOfTwo = ['stone', 'packet', 'lot', 'stock'].includes(field) && type !== 'identity_checked';
    const without = isOneOfTwo ? Object.fromEntries(others.map((name) => [name, undefined])) : {};
    const stones = 'stones' in sampleOf(type) && kind === 'stone' ? { stones: 1 } : {};
    const code = deciding(entry)({ ...without, [field]: view } as never, { ...without, ...stones, [field]: view?.id } as never);
    const may = STILL[`${type} ${field}`] ?? STILL[`${type} ${field} ${kind}`];
    expect(code).toEqual(may === undefined ? expect.stringMatching(/^(piece_is_gone|thing_is_gone|lot_is_sealed)$/) : null);
  });
});
