// Two jobs that do not agree: a count that stops the way home, and a weight that went in as it was read, about a bag tag too heavy.
import { ISOLDE, PRIYA, TOBIAS } from './shop.ts';
import { asked, at, goesHome, refused, story, takesIn, tell } from './story.ts';

export const stoneCount = story(
  'the stone count',
  at(
    '9 days ago 12:15',
    PRIYA,
    ...takesIn({
      customer: { name: 'Wilfred Ames', phone: '07700 900171' },
      piece: {
        ...{
          kind: 'ring',
          description: 'Cluster ring, ruby in twelve diamonds, 18ct',
          parts: [{ part: 'ring', metal: 'gold-750' }],
          stones: 13,
        },
        ...{ weight: '5.38 g', ringSizeMm: '52.5', condition: 'dirt behind the cluster, no seat empty as far as seen' },
      },
      seen: [
        tell('value_stated', { band: 'to-2000', statedBy: 'customer' }),
        tell('setting_noted', {
          stone: 'the ruby',
          seat: 'middle',
          species: 'ruby',
          cut: 'oval',
          sizeMm: '6.1',
          backing: 'open',
          state: 'sound',
        }),
        tell('photo_added', {
          about: 'piece',
          photo: { of: 'brooch', metal: 'yellow', stones: ['red', ...Array.from({ length: 12 }, () => 'clear' as const)], reading: '5.38' },
          shows: 'pan',
        }),
      ],
      work: { steps: ['check', 'clean', 're-tip'], details: 'two claws of the ruby', price: '£75', promise: 'today' },
    }),
    tell('moved', { of: 'job', to: 'tray A' }),
  ),
  at('4 days ago 11:00', TOBIAS, tell('taken', { of: 'job', from: 'tray A' })),
  at(
    '4 days ago 11:50',
    TOBIAS,
    tell('piece_cleaned', { how: ['ultrasonic'], dry: 'dry', weight: '5.35 g' }),
    tell('metal_added', { stock: '18ct yellow wire', metal: 'gold-750', weight: '0.04 g by difference', what: 'claw' }),
    tell('piece_weighed', { state: 'finished', weight: '5.38 g' }),
    tell('work_finished'),
    tell('moved', { of: 'job', to: 'tray B' }),
  ),
  refused('stone_count_differs', at('today 09:50', PRIYA, ...goesHome({ stones: 12, weight: '5.38 g', taker: 'Wilfred Ames' }))),
);

export const oddWeight = story(
  'the odd weight',
  at(
    '6 days ago 16:10',
    PRIYA,
    ...takesIn({
      customer: { name: 'Cosima Trell', phone: '07700 900189' },
      piece: {
        ...{
          kind: 'ring',
          description: 'Signet ring, worn thin at the back, 18ct yellow',
          parts: [{ part: 'ring', metal: 'gold-750' }],
          stones: 0,
        },
        ...{ weight: '7.12 g', ringSizeMm: '57.5', condition: 'crest still sharp; shank 0.7 mm at the back' },
      },
      seen: [
        tell('value_stated', { band: 'to-2000', statedBy: 'customer' }),
        tell('mark_read', { kind: 'fineness', where: 'inside the shank', struck: '18', legible: 'worn' }),
        tell('photo_added', { about: 'piece', photo: { of: 'ring', metal: 'yellow', reading: '7.12' }, shows: 'pan' }),
      ],
      work: {
        steps: ['half-shank', 'polish'],
        price: '£190',
        promise: 'in 2 days',
        cutMetal: 'credit',
        oldParts: 'shop',
        markConsent: true,
      },
    }),
  ),
  at('yesterday 10:10', TOBIAS, tell('taken', { of: 'job', from: 'the counter' })),
  at(
    'yesterday 11:45',
    TOBIAS,
    tell('piece_cleaned', { how: ['ultrasonic'], dry: 'dry', weight: '7.10 g' }),
    tell('metal_cut', { metal: 'gold-750', weight: '0.62 g', lot: '18ct yellow lot', part: 'back half of the shank' }),
    tell('metal_added', { stock: '18ct yellow sheet', metal: 'gold-750', weight: '0.88 g', what: 'shank' }),
    tell('metal_added', { stock: '18ct yellow solder', metal: 'gold-750', weight: '0.03 g by difference', what: 'solder' }),
  ),
  asked('not_expected', at('yesterday 16:30', TOBIAS, tell('piece_weighed', { state: 'polished', weight: '7.81 g' }))),
  at(
    'yesterday 16:35',
    TOBIAS,
    tell('piece_weighed', { state: 'polished', weight: '7.81 g, again 7.81: the same twice; to be looked at tomorrow with fresh eyes' }),
    tell('moved', { of: 'job', to: 'tray A' }),
  ),
  at(
    'today 08:45',
    ISOLDE,
    tell('note_added', { about: 'job', text: 'Asked Tobias whether the tag was off before it went on the pan. He does not remember.' }),
  ),
);
