// A customer becomes known to the shop. Everything about them is sealed: the leaf tells that somebody was met and nothing else.
import { begins, defineEntry, optional, sealed, stated } from '../book/entry.js';
import { anyStaff } from '../book/may.js';
import { choices, text } from '../book/values.js';

const CONTACT_RULES = {
  surprise: 'it is a surprise',
  mobile: 'mobile only',
  spouse: 'not the spouse',
  letters: 'letters only',
  none: 'no contact',
};
export const customerMet = defineEntry({
  type: 'customer_met',
  version: 1,
  fields: {
    customer: begins('customer'),
    name: sealed('shop', stated(text(120))),
    phone: optional(sealed('shop', stated(text(40)))),
    email: optional(sealed('shop', stated(text(200)))),
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
