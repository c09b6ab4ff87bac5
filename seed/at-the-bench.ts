// Three jobs on the bench: an eternity ring whose stones share a packet, a ring recast from its own gold, and a marked ring near what the law lets one add.
import type { Stone } from './pictures.ts';
import { ISOLDE, PRIYA, TOBIAS } from './shop.ts';
import { at, refused, story, takesIn, tell } from './story.ts';

const TWENTY_TWO: readonly Stone[] = Array.from({ length: 22 }, () => 'clear' as const);

export const eternityRing = story(
  'the eternity ring',
  at(
    '10 days ago 14:00',
    PRIYA,
    ...takesIn({
      customer: { name: 'Rosamund Vane', phone: '07700 900231' },
      piece: {
        ...{
          kind: 'ring',
          description: 'Full eternity ring, 22 diamonds, 18ct white',
          parts: [{ part: 'ring', metal: 'gold-750' }],
          stones: 22,
        },
        ...{ weight: '3.47 g', ringSizeMm: '55.0', condition: 'beads worn along one edge, two stones turn' },
      },
      seen: [
        tell('value_stated', { band: 'to-2000', statedBy: 'customer' }),
        tell('setting_noted', {
          ...{ packet: 'the parcel', seat: 'all round, 22 seats', species: 'diamond', cut: 'round', sizeMm: '1.7' },
          ...{ backing: 'open', state: 'loose', stones: 22 },
        }),
        tell('photo_added', {
          about: 'piece',
          photo: { of: 'full hoop', metal: 'white', stones: TWENTY_TWO, reading: '3.47' },
          shows: 'pan',
        }),
      ],
      work: { steps: ['take-out', 'laser', 'set'], details: 'build up the worn edge, set all again', price: '£380', promise: 'in 4 days' },
    }),
  ),
  at('7 days ago 09:15', TOBIAS, tell('taken', { of: 'job', from: 'the counter' })),
  at(
    '7 days ago 11:20',
    TOBIAS,
    tell('piece_cleaned', { how: ['ultrasonic', 'steam'], dry: 'dry', weight: '3.46 g' }),
    tell('stone_unset', { packet: 'the parcel', stones: 22, weight: '0.464 ct', condition: 'sound' }),
    tell('piece_weighed', { state: 'stones out', weight: '3.37 g' }),
  ),
  refused('more_than_are_in', at('7 days ago 11:25', TOBIAS, tell('stone_unset', { packet: 'the parcel', stones: 1, condition: 'sound' }))),
  at(
    '3 days ago 15:00',
    TOBIAS,
    tell('metal_added', { stock: '18ct yellow wire', metal: 'gold-750', weight: '0.12 g by difference', what: 'other' }),
    tell('piece_weighed', { state: 'joined', weight: '3.48 g' }),
  ),
  refused(
    'packet_count_differs',
    at('yesterday 12:20', TOBIAS, tell('stone_set', { packet: 'the parcel', stones: 14, left: 7, weight: '0.295 ct' })),
  ),
  at(
    'yesterday 12:25',
    TOBIAS,
    tell('stone_set', { packet: 'the parcel', stones: 14, left: 8, weight: '0.295 ct', seat: 'from the mark, clockwise' }),
  ),
);

export const ownGold = story(
  'the own gold',
  at(
    '16 days ago 11:10',
    PRIYA,
    ...takesIn({
      customer: { name: 'Magnus Eddowes', phone: '07700 900246' },
      piece: {
        ...{
          kind: 'ring',
          description: 'His father’s broad band, to be made narrower, 22ct',
          parts: [{ part: 'band', metal: 'gold-916' }],
          stones: 0,
        },
        ...{ weight: '9.26 g', ringSizeMm: '60.0', condition: 'cracked through at an old sizing' },
      },
      seen: [
        tell('value_stated', { band: 'to-2000', statedBy: 'customer' }),
        tell('photo_added', { about: 'piece', photo: { of: 'ring', metal: 'yellow', reading: '9.26' }, shows: 'pan' }),
      ],
      work: {
        steps: ['remodel', 'polish'],
        details: 'his gold alone, none of ours',
        price: '£420',
        promise: 'in 3 days',
        dust: 'customer',
        heatConsent: true,
      },
    }),
  ),
  at('8 days ago 09:30', ISOLDE, tell('taken', { of: 'job', from: 'the counter' })),
  at(
    '8 days ago 10:10',
    ISOLDE,
    tell('piece_cleaned', { how: ['pickle', 'soap'], dry: 'dry', weight: '9.25 g' }),
    tell('metal_cut', { metal: 'gold-916', weight: '3.84 g', packet: 'his own gold', part: 'the cracked side' }),
    tell('piece_weighed', { state: 'cut', weight: '5.40 g' }),
  ),
  at(
    '8 days ago 13:30',
    ISOLDE,
    tell('note_added', { about: 'job', text: 'Melted in a fresh crucible, rolled to 1.6 mm. Nothing of ours in it.' }),
  ),
  refused(
    'one_source',
    at(
      '5 days ago 10:00',
      ISOLDE,
      tell('metal_added', { stock: '18ct yellow wire', packet: 'his own gold', metal: 'gold-916', weight: '2.10 g', what: 'shank' }),
    ),
  ),
  at(
    '5 days ago 10:05',
    ISOLDE,
    tell('metal_added', { packet: 'his own gold', metal: 'gold-916', weight: '2.10 g', what: 'shank' }),
    tell('stone_weighed', { of: 'his own gold', state: 'loose', weight: '8.550 ct' }),
    tell('piece_weighed', { state: 'joined', weight: '7.49 g' }),
  ),
);

export const hallmarkedRing = story(
  'the hallmarked ring',
  at(
    '7 days ago 10:45',
    PRIYA,
    ...takesIn({
      customer: { name: 'Beatrix Moyle', phone: '07700 900259' },
      piece: {
        ...{
          kind: 'ring',
          description: 'Court wedding ring, worn, hallmarked 18ct',
          parts: [{ part: 'shank', metal: 'gold-750' }],
          stones: 0,
        },
        ...{ weight: '3.42 g', ringSizeMm: '50.0', condition: 'thin along a third of the shank' },
      },
      seen: [
        tell('value_stated', { band: 'to-500', statedBy: 'customer' }),
        tell('mark_read', { kind: 'sponsor', where: 'inside the shank', struck: 'QZW', legible: 'clear' }),
        tell('mark_read', { kind: 'fineness', where: 'inside the shank', struck: '750', legible: 'clear' }),
        tell('mark_read', { kind: 'office', where: 'inside the shank', struck: 'anchor', legible: 'worn' }),
        tell('photo_added', { about: 'piece', photo: { of: 'ring', metal: 'yellow', reading: '3.42' }, shows: 'pan' }),
      ],
      work: { steps: ['half-shank', 'size-up'], price: '£210', promise: 'in 2 days' },
    }),
  ),
  refused(
    'work_not_finished',
    at('6 days ago 12:00', PRIYA, tell('piece_returned', { stones: 0, to: 'customer', shown: 'the collection slip', signed: 'signature' })),
  ),
  at('yesterday 14:00', ISOLDE, tell('taken', { of: 'job', from: 'the counter' })),
  at(
    'yesterday 15:10',
    ISOLDE,
    tell('metal_cut', { metal: 'gold-750', weight: '0.41 g', packet: 'the old shank', part: 'thin third, clear of the marks' }),
    tell('metal_added', { stock: '18ct yellow sheet', metal: 'gold-750', weight: '0.91 g', what: 'shank' }),
    tell('metal_added', { stock: '18ct yellow solder', metal: 'gold-750', weight: '0.03 g by difference', what: 'solder' }),
    tell('piece_sized', { method: 'insert', from: 'K', to: 'L' }),
    tell('piece_weighed', { state: 'joined', weight: '3.94 g' }),
  ),
);
