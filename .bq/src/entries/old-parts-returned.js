// A packet of old parts, worn metal or stones goes home whole.
import { defineEntry, ref, stated } from '../book/entry.js';
import { goesHome, RETURNED_TO, SIGNED } from '../book/hand-back.js';
import { anyStaffByPin } from '../book/may.js';
import { onHold, thingIsGone } from '../book/refusals.js';
import { choice } from '../book/values.js';
export const oldPartsReturned = defineEntry({
  type: 'old_parts_returned',
  version: 1,
  fields: { packet: ref('packet'), to: stated(choice(RETURNED_TO)), signed: stated(choice(SIGNED)) },
  subject: 'packet',
  may: anyStaffByPin,
  form: { title: 'Hand old parts back', labels: { packet: 'Packet', to: 'To whom', signed: 'Signed' }, cautions: ['posting-cover'] },
  decide: ({ packet }, _data, { today }) => thingIsGone(packet, 'packet') ?? onHold(packet, today, 'packet'),
  facts: ({ packet, to }) => goesHome(packet, to),
  say: ({ packet, to, signed }, name) => `Old parts returned ${RETURNED_TO[to]}: ${name(packet)}, ${SIGNED[signed]}`,
  tell: 'as said',
  next: ({ status }) => (status === 'finished' ? 24 : null),
});
