// An heirloom on the full path: a half-hoop of five stones, its claws rebuilt and its shank renewed, with two figures swapped and put right on the way.

import type { Stone } from './pictures.ts';
import { ISOLDE, PRIYA, TOBIAS } from './shop.ts';
import { as, asked, at, correct, goesHome, refused, story, takesIn, tell } from './story.ts';

const FIVE: readonly Stone[] = ['clear', 'clear', 'blue', 'clear', 'clear'];
const EMPTY: readonly Stone[] = ['empty', 'empty', 'empty', 'empty', 'empty'];
const SEATS = [
  { stone: 'end diamond, left', species: 'diamond', cut: 'old', sizeMm: '3.8', out: '0.214 ct' },
  { stone: 'diamond left of the sapphire', species: 'diamond', cut: 'old', sizeMm: '4.6', out: '0.381 ct' },
  { stone: 'the sapphire', species: 'sapphire', cut: 'cushion', sizeMm: '5.7', out: '0.842 ct' },
  { stone: 'diamond right of the sapphire', species: 'diamond', cut: 'old', sizeMm: '4.6', out: '0.377 ct' },
  { stone: 'end diamond, right', species: 'diamond', cut: 'old', sizeMm: '3.8', out: '0.219 ct' },
] as const;

export const heirloom = story(
  'the heirloom',
  at(
    '27 days ago 10:05',
    PRIYA,
    ...takesIn({
      customer: { name: 'Oriel Standish', phone: '07700 900158', email: 'oriel.standish@example.org', contact: ['letters', 'mobile'] },
      piece: {
        ...{ kind: 'ring', description: 'Half-hoop ring, five stones, her grandmother’s' },
        ...{
          parts: [
            { part: 'shank', metal: 'gold-unknown' },
            { part: 'head', metal: 'gold-unknown' },
          ],
          stones: 5,
          weight: '4.62 g',
          ringSizeMm: '53.8',
        },
        condition: 'claws worn through over both ends; shank thin at the back; soap under the stones',
      },
      seen: [
        tell('value_stated', { value: '£4200', statedBy: 'paper' }),
        tell('mark_read', { kind: 'fineness', where: 'inside the shank', legible: 'illegible' }),
        ...SEATS.map(({ stone, species, cut, sizeMm }, i) =>
          tell('setting_noted', {
            stone,
            seat: `seat ${i + 1} from the left`,
            species,
            cut,
            sizeMm,
            backing: 'open',
            state: i === 0 ? 'loose' : 'sound',
          }),
        ),
        tell('photo_added', { about: 'piece', photo: { of: 'ring', metal: 'yellow', stones: FIVE, reading: '4.62' }, shows: 'pan' }),
      ],
      work: {
        ...{ steps: ['take-out', 're-claw', 'half-shank', 'set', 'polish'], details: 'all twenty claws; back half of the shank in 18ct' },
        ...{
          priceKind: 'estimate',
          price: '£640',
          promise: '4 days ago',
          cutMetal: 'customer',
          oldParts: 'customer',
          heatConsent: true,
          markConsent: true,
        },
      },
    }),
    tell('moved', { of: 'job', to: 'tray A' }),
  ),
  at('24 days ago 09:10', ISOLDE, tell('taken', { of: 'job', from: 'tray A' })),
  at(
    '24 days ago 09:40',
    ISOLDE,
    tell('piece_cleaned', { how: ['ultrasonic', 'steam'], dry: 'dry', weight: '4.58 g' }),
    tell('inspected_before_work', {
      findings: 'old solder under seat 2; sapphire has a nick at the girdle, 7 o’clock; end diamond on the left loose',
    }),
    tell('photo_added', { about: 'the sapphire', photo: { of: 'paper', metal: 'yellow', stones: ['blue'] }, shows: 'stones' }),
  ),
  at(
    '24 days ago 11:15',
    ISOLDE,
    tell('customer_told', {
      what: 'An old nick at the girdle of the sapphire, seen under the loupe before any work. The claw will cover it.',
      how: 'phone',
      answer: 'agreed',
    }),
  ),
  at(
    '23 days ago 10:20',
    ISOLDE,
    ...SEATS.map(({ stone, out }) =>
      tell('stone_unset', { stone, stones: 1, weight: out, condition: stone === 'the sapphire' ? 'chipped' : 'sound' }),
    ),
    tell('photo_added', { about: 'piece', photo: { of: 'ring', metal: 'yellow', stones: EMPTY, reading: '4.17' }, shows: 'work' }),
    tell('piece_weighed', { state: 'stones out', weight: '4.17 g' }),
  ),
  refused(
    'stone_is_loose',
    at('23 days ago 10:25', ISOLDE, tell('stone_unset', { stone: 'the sapphire', stones: 1, condition: 'chipped' })),
  ),
  at('23 days ago 10:40', ISOLDE, tell('moved', { of: 'the sapphire', to: 'tray B' })),
  at(
    '21 days ago 14:10',
    ISOLDE,
    tell('metal_cut', { metal: 'gold-750', weight: '0.06 g', lot: '18ct yellow lot', part: 'worn claw tips' }),
    tell('metal_cut', { metal: 'gold-750', weight: '0.38 g', packet: 'the old shank', part: 'back half of the shank' }),
    tell('piece_weighed', { state: 'cut', weight: '3.72 g' }),
  ),
  refused('pieces_still_in', at('21 days ago 14:30', ISOLDE, tell('job_closed'))),
  at(
    '20 days ago 11:30',
    ISOLDE,
    as(
      'the claw wire',
      tell('metal_added', { stock: '18ct yellow wire', metal: 'gold-750', weight: '0.42 g by difference', what: 'claw' }),
    ),
    tell('metal_added', { stock: '18ct yellow sheet', metal: 'gold-750', weight: '0.52 g', what: 'shank' }),
    tell('metal_added', { stock: '18ct yellow solder', metal: 'gold-750', weight: '0.03 g by difference', what: 'solder' }),
  ),
  asked('not_expected', at('20 days ago 15:45', ISOLDE, tell('piece_weighed', { state: 'joined', weight: '4.51 g' }))),
  at('20 days ago 15:50', ISOLDE, correct('the claw wire', 'weight', '0.24 g by difference', 'figures swapped: the coil lost 0.24 g')),
  at('20 days ago 15:55', ISOLDE, tell('piece_weighed', { state: 'joined', weight: '4.51 g' })),
  at('19 days ago 16:20', ISOLDE, tell('piece_weighed', { state: 'polished', weight: '4.50 g' })),
  at('17 days ago 10:00', TOBIAS, tell('taken', { of: 'job', from: 'bench 1' }), tell('taken', { of: 'the sapphire', from: 'tray B' })),
  at('17 days ago 12:40', TOBIAS, ...SEATS.map(({ stone }) => tell('stone_set', { stone, stones: 1 }))),
  at(
    '16 days ago 09:50',
    TOBIAS,
    tell('piece_cleaned', { how: ['ultrasonic', 'steam'], dry: 'dry' }),
    tell('piece_weighed', { state: 'finished', weight: '4.90 g' }),
    tell('piece_checked', { stones: 5, seats: 'tight', ringSizeMm: '53.8', marks: 'none', note: 'each claw tried with a pin' }),
    tell('photo_added', { about: 'piece', photo: { of: 'ring', metal: 'yellow', stones: FIVE, reading: '4.90' }, shows: 'pan' }),
    tell('work_finished'),
    tell('moved', { of: 'job', to: 'tray B' }),
  ),
  at(
    '9 days ago 11:05',
    PRIYA,
    tell('identity_checked', { stone: 'the sapphire', how: ['loupe', 'photo'], agrees: 'agrees' }),
    tell('identity_checked', { how: ['loupe'], agrees: 'agrees' }),
    tell('old_parts_returned', { packet: 'the old shank', to: 'customer', signed: 'signature' }),
    ...goesHome({ stones: 5, weight: '4.90 g', taker: 'Oriel Standish' }),
  ),
);
