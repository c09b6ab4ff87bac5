// What a piece is said to be worth, for custody alone: no valuation, and not an insurer's agreed value. It is sealed, so that no letter carries it.
import { BANDS } from '../book/bands.js';
import { defineEntry, optional, ref, sealed, stated } from '../book/entry.js';
import { identities } from '../book/given.js';
import { anyStaff } from '../book/may.js';
import { exactlyOne, pieceIsGone } from '../book/refusals.js';
import { choice, money } from '../book/values.js';

const STATED_BY = { customer: 'the customer', paper: 'a dated paper', shop: 'the shop' };
const EITHER = 'Give the value or a band, and only one of them.';
export const valueStated = defineEntry({
  type: 'value_stated',
  version: 1,
  fields: {
    piece: ref('piece'),
    value: optional(sealed('shop', stated(money()))),
    band: optional(sealed('shop', stated(choice(BANDS)))),
    statedBy: stated(choice(STATED_BY)),
  },
  subject: 'piece',
  may: anyStaff,
  form: {
    title: 'State the value',
    labels: { piece: 'Piece', value: 'Stated value', band: 'Or a band', statedBy: 'Stated by' },
    cautions: ['insurance-limits', 'bailee'],
  },
  decide: ({ piece }, { value, band }) => pieceIsGone(piece) ?? exactlyOne(value, band, 'value_or_band', EITHER, 'value'),
  facts: ({ piece, statedBy }) => identities(piece, { valueStatedBy: statedBy }),
  say: ({ statedBy }) => `Value stated by ${STATED_BY[statedBy]}, for custody only`,
  tell: null,
  next: ({ status, pieces }) => (status === 'open' && pieces > 0 ? 23 : null),
});
