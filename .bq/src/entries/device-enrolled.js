// A screen or phone may be used in the shop from now on.
import { defineEntry, ref, stated } from '../book/entry.js';
import { fact } from '../book/facts.js';
import { ownerByPassword } from '../book/may.js';
import { choice, text } from '../book/values.js';

const DEVICE_KINDS = { counter: 'counter screen', bench: 'bench screen', phone: 'phone', office: 'office computer' };
export const deviceEnrolled = defineEntry({
  type: 'device_enrolled',
  version: 1,
  fields: { shop: ref('shop'), device: stated(text(60)), name: stated(text(60)), kind: stated(choice(DEVICE_KINDS)) },
  subject: 'shop',
  may: ownerByPassword,
  form: {
    title: 'Enrol a device',
    labels: { shop: 'Shop', device: 'Its key', name: 'What you call it', kind: 'What kind' },
  },
  decide: () => null,
  facts: ({ shop, device, name }) => [fact('policy', { of: shop, name: `device:${device}`, says: name })],
  say: ({ name, kind }) => `Device enrolled: ${name} (${DEVICE_KINDS[kind]})`,
  tell: null,
});
