// Wait and take: an earring post straightened while its owner stands at the counter; in, done and home in one command.
import { PRIYA } from './shop.ts';
import { at, goesHome, story, takesIn, tell } from './story.ts';

export const waitAndTake = story(
  'the earring',
  at(
    '3 days ago 12:30',
    PRIYA,
    ...takesIn({
      customer: { name: 'Juniper Slade' },
      piece: {
        ...{ kind: 'earrings', description: 'Pearl studs, one post bent', parts: [{ part: 'posts', metal: 'gold-375' }], stones: 2 },
        condition: 'post bent, pearls sound',
      },
      seen: [tell('weight_not_taken', { reason: 'declined', more: 'she waits' })],
      work: { steps: ['other'], details: 'straighten one post', priceKind: 'free', promise: '3 days ago' },
    }),
    tell('piece_checked', { stones: 2, seats: 'tight', marks: 'none' }),
    tell('work_finished'),
    ...goesHome({ stones: 2, shown: 'she never left the counter' }),
  ),
);
