// The shop's terms from now on: their words, and the SHA-256 of them by which agreements and papers name them.
import { defineEntry, ref, refuse, stated } from '../book/entry.ts';
import { fact } from '../book/facts.ts';
import { ownerByPassword } from '../book/may.ts';
import { termsName } from '../book/terms.ts';
import { file, lines } from '../book/values.ts';

export const termsSet = defineEntry({
  type: 'terms_set',
  version: 1,
  fields: { shop: ref('shop'), text: stated(lines(4000)), digest: stated(file()) },
  subject: 'shop',
  may: ownerByPassword,
  form: {
    title: 'Set the terms',
    labels: { shop: 'Shop', text: 'Terms, one a line', digest: 'SHA-256 of the text' },
    hints: { text: 'Printed on every slip. Jobs that were agreed before keep the terms they were agreed under.' },
    button: 'Set the terms',
  },
  ownPage: true,
  decide: ({ shop }, { digest }) =>
    shop.says.terms === termsName(digest)
      ? refuse('terms_are_these', 'These are the terms already. Nothing more is needed.', 'text')
      : null,
  facts: ({ shop, text, digest }) => [
    fact('policy', { of: shop, name: 'terms', says: termsName(digest) }),
    fact('policy', { of: shop, name: `terms:${termsName(digest)}`, says: text }),
  ],
  say: ({ digest }) => `Terms set: ${termsName(digest)}`,
  tell: null,
});
