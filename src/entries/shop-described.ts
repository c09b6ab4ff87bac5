// Where the shop is and how it is reached, as papers say it. Only what is given changes.
import { defineEntry, optional, ref, refuse, stated } from '../book/entry.ts';
import { fact } from '../book/facts.ts';
import { given } from '../book/given.ts';
import { ownerByPassword } from '../book/may.ts';
import { lines, text } from '../book/values.ts';

export const shopDescribed = defineEntry({
  type: 'shop_described',
  version: 1,
  fields: {
    shop: ref('shop'),
    address: optional(stated(lines(300))),
    phone: optional(stated(text(40))),
    email: optional(stated(text(120))),
  },
  subject: 'shop',
  may: ownerByPassword,
  form: {
    title: 'Address and phone of the shop',
    labels: { shop: 'Shop', address: 'Address', phone: 'Phone', email: 'Email' },
    hints: { address: 'As it stands on slips and letters.' },
  },
  decide: (_view, { shop: _shop, ...said }) =>
    Object.values(said).every((value) => value === undefined) ? refuse('nothing_said', 'Fill in what changes.') : null,
  facts: ({ shop, address, phone, email }) =>
    Object.entries({ address, phone, email }).flatMap(([name, says]) =>
      given(says, (words) => fact('policy', { of: shop, name, says: words })),
    ),
  say: ({ address, phone, email }) => ['Shop described', address?.replaceAll('\n', ', '), phone, email].filter(Boolean).join(', '),
  tell: null,
});
