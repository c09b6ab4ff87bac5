// A screen or phone may no longer be used: lost, sold, or put away.
import { defineEntry, ref, refuse, stated } from '../book/entry.ts';
import { fact } from '../book/facts.ts';
import { ownerByPassword } from '../book/may.ts';
import { text } from '../book/values.ts';

export const deviceWithdrawn = defineEntry({
  type: 'device_withdrawn',
  version: 1,
  fields: { shop: ref('shop'), device: stated(text(60)), name: stated(text(60)) },
  subject: 'shop',
  may: ownerByPassword,
  form: {
    title: 'Withdraw a device',
    labels: { shop: 'Shop', device: 'Its key', name: 'What you call it' },
  },
  decide: ({ shop }, { device }) =>
    shop.says[`device:${device}`] ? null : refuse('not_enrolled', 'No such device is in use. Choose one under Setup, Screens.', 'device'),
  facts: ({ shop, device }) => [fact('policy', { of: shop, name: `device:${device}`, says: '' })],
  say: ({ name }) => `Device withdrawn: ${name}`,
  tell: null,
});
