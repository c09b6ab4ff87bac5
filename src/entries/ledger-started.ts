// The first leaf: the shop begins, and with it its owner.
import { begins, defineEntry, sealed, stated } from '../book/entry.ts';
import { fact } from '../book/facts.ts';
import { ownerByPassword } from '../book/may.ts';
import { text } from '../book/values.ts';

export const ledgerStarted = defineEntry({
  type: 'ledger_started',
  version: 1,
  fields: {
    shop: begins('shop'),
    owner: begins('person'),
    shopName: stated(text(80)),
    ownerName: sealed('shop', stated(text(80))),
  },
  subject: 'shop',
  may: ownerByPassword,
  form: {
    title: 'Start the ledger',
    labels: { shop: 'Shop', owner: 'Owner', shopName: 'Name of the shop', ownerName: 'Your name' },
  },
  ownPage: true,
  decide: () => null,
  facts: ({ shop, owner, shopName }) => [
    fact('identity', { of: shop, mark: 'name', says: shopName }),
    fact('role', { of: owner, role: 'owner' }),
  ],
  say: ({ shopName }) => `Ledger started for ${shopName}`,
  tell: null,
});
