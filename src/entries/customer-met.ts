// A customer becomes known to the shop. Everything about them is sealed: the leaf tells that somebody was met and nothing else.
import { begins, defineEntry, observed, optional, sealed, stated } from '../book/entry.ts';
import { anyStaff } from '../book/may.ts';
import { choices, text } from '../book/values.ts';

const CONTACT_RULES = {
  surprise: 'it is a surprise',
  mobile: 'mobile only',
  spouse: 'not the spouse',
  letters: 'letters only',
  none: 'no contact',
} as const;

export const customerMet = defineEntry({
  type: 'customer_met',
  version: 1,
  fields: {
    customer: begins('customer'),
    name: sealed('shop', observed(text(120))),
    phone: optional(sealed('shop', observed(text(40)))),
    email: optional(sealed('shop', observed(text(200)))),
    contact: optional(sealed('shop', stated(choices(CONTACT_RULES)))),
  },
  subject: 'customer',
  may: anyStaff,
  form: {
    title: 'Meet a customer',
    labels: { customer: 'Customer', name: 'Name', phone: 'Phone', email: 'Email', contact: 'How they may be reached' },
  },
  decide: () => null,
  facts: () => [],
  say: ({ customer }, name) => `Customer met: ${name(customer)}`,
  tell: null,
});
