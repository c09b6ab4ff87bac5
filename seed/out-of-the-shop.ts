// Jobs that wait for somebody else: a ring at the setter’s that should have been back yesterday, and a brooch past its promise.
import { ISOLDE, PRIYA } from './shop.ts';
import { at, refused, story, takesIn, tell } from './story.ts';

export const atTheSetter = story(
  'the ring at the setter’s',
  at(
    '14 days ago 13:20',
    PRIYA,
    ...takesIn({
      customer: { name: 'Leopold Hask', phone: '07700 900204', contact: ['surprise', 'mobile'] },
      piece: {
        ...{
          kind: 'ring',
          description: 'Three-stone ring, old heads, platinum',
          parts: [
            { part: 'shank', metal: 'platinum-950' },
            { part: 'heads', metal: 'platinum-950' },
          ],
        },
        ...{ stones: 3, weight: '6.84 g', ringSizeMm: '51.2', condition: 'middle head cracked at one claw' },
      },
      seen: [
        tell('value_stated', { band: 'to-10000', statedBy: 'customer' }),
        tell('setting_noted', {
          stone: 'the middle diamond',
          seat: 'middle',
          species: 'diamond',
          cut: 'round',
          sizeMm: '6.2',
          backing: 'open',
          state: 'sound',
        }),
        tell('photo_added', {
          about: 'piece',
          photo: { of: 'ring', metal: 'white', stones: ['clear', 'clear', 'clear'], reading: '6.84' },
          shows: 'pan',
        }),
      ],
      work: { steps: ['take-out', 'laser', 'set'], details: 'middle head; set again by our setter', price: '£260', promise: 'in 2 days' },
    }),
    tell('moved', { of: 'job', to: 'tray A' }),
  ),
  at('11 days ago 09:45', ISOLDE, tell('taken', { of: 'job', from: 'tray A' })),
  at(
    '11 days ago 10:30',
    ISOLDE,
    tell('piece_cleaned', { how: ['ultrasonic', 'steam'], dry: 'dry', weight: '6.83 g' }),
    tell('stone_unset', { stone: 'the middle diamond', stones: 1, weight: '0.912 ct', condition: 'sound' }),
    tell('piece_weighed', { state: 'joined', weight: '6.65 g' }),
  ),
  at(
    '9 days ago 16:30',
    ISOLDE,
    tell('released', {
      ...{ of: 'job', outworker: 'K. Brandreth, setter', purpose: 'setting', count: 2, carrier: 'by hand' },
      ...{ declared: '£6500', seal: 'B 20417', dueBack: 'yesterday' },
    }),
    tell('accepted', { of: 'job', evidence: 'sheet', seal: 'B 20417', sealState: 'intact', count: 2 }),
  ),
  at('today 09:05', PRIYA, tell('note_added', { about: 'job', text: 'Rang the setter, no answer. Trying again after lunch.' })),
);

export const lateBrooch = story(
  'the late brooch',
  at(
    '21 days ago 15:15',
    PRIYA,
    ...takesIn({
      customer: { name: 'Philippa Crewe', phone: '07700 900218' },
      piece: {
        ...{
          kind: 'brooch',
          description: 'Seed-pearl crescent brooch, pin broken off, 9ct',
          parts: [{ part: 'brooch', metal: 'gold-375' }],
        },
        ...{ stones: 17, weight: '3.94 g', condition: 'pin gone, catch soft, pearls dry' },
      },
      seen: [
        tell('value_stated', { band: 'to-500', statedBy: 'customer' }),
        tell('setting_noted', {
          packet: 'the pearls',
          seat: 'crescent, 17 seats',
          species: 'half pearl or seed pearl',
          backing: 'closed',
          state: 'sound',
          stones: 17,
        }),
        tell('photo_added', {
          about: 'piece',
          photo: { of: 'brooch', metal: 'yellow', stones: Array.from({ length: 17 }, () => 'pearl' as const), reading: '3.94' },
          shows: 'pan',
        }),
      ],
      work: {
        steps: ['laser', 'other'],
        details: 'new pin and catch; no heat and no water near the pearls',
        price: '£95',
        promise: '4 days ago',
      },
    }),
    tell('moved', { of: 'job', to: 'tray B' }),
  ),
  refused(
    'promise_is_past',
    at('3 days ago 10:00', PRIYA, tell('promise_moved', { promise: '4 days ago', why: 'the pin has not come', told: 'not yet' })),
  ),
  at(
    '3 days ago 10:05',
    PRIYA,
    tell('customer_told', {
      what: 'The pin from our supplier has not come. We are sorry; it will be next week.',
      how: 'phone',
      answer: 'agreed',
    }),
  ),
);
