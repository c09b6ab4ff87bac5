// Three short tickets: a sizing that waits for its customer, a chain that went home, and a clasp that has just come in.
import { ISOLDE, PRIYA, TOBIAS } from './shop.ts';
import { at, goesHome, story, takesIn, tell } from './story.ts';

export const sizing = story(
  'the sizing',
  at(
    '5 days ago 10:12',
    PRIYA,
    ...takesIn({
      customer: { name: 'Hester Lyle', phone: '07700 900112' },
      piece: {
        ...{ kind: 'ring', description: 'Plain wedding ring, 18ct yellow', parts: [{ part: 'shank', metal: 'gold-750' }] },
        ...{ stones: 0, weight: '4.12 g', ringSizeMm: '51.2', condition: 'light scratches all round' },
      },
      seen: [
        tell('mark_read', { kind: 'fineness', where: 'inside the shank', struck: '750', legible: 'clear' }),
        tell('value_stated', { band: 'to-500', statedBy: 'customer' }),
        tell('photo_added', { about: 'piece', photo: { of: 'ring', metal: 'yellow', reading: '4.12' }, shows: 'pan' }),
      ],
      work: { steps: ['size-up', 'polish'], price: '£48', promise: 'in 1 day' },
    }),
    tell('moved', { of: 'job', to: 'tray A' }),
  ),
  at('2 days ago 09:20', ISOLDE, tell('taken', { of: 'job', from: 'tray A' })),
  at(
    '2 days ago 09:55',
    ISOLDE,
    tell('metal_added', { stock: '18ct yellow wire', metal: 'gold-750', weight: '0.17 g', what: 'wire' }),
    tell('metal_added', { stock: '18ct yellow solder', metal: 'gold-750', weight: '0.01 g by difference', what: 'solder' }),
    tell('piece_sized', { method: 'insert', from: 'L', to: 'N' }),
  ),
  at(
    '2 days ago 10:30',
    ISOLDE,
    tell('piece_weighed', { state: 'finished', weight: '4.29 g' }),
    tell('piece_checked', { stones: 0, seats: 'none', ringSizeMm: '53.8', marks: 'readable' }),
    tell('work_finished'),
    tell('moved', { of: 'job', to: 'tray B' }),
  ),
);

export const chain = story(
  'the chain',
  at(
    '8 days ago 11:40',
    PRIYA,
    ...takesIn({
      customer: { name: 'Dunstan Oakes', phone: '07700 900126', contact: ['mobile'] },
      piece: {
        ...{ kind: 'chain', description: 'Curb chain, broken near the clasp, 9ct yellow', parts: [{ part: 'links', metal: 'gold-375' }] },
        ...{ stones: 0, weight: '11.47 g', condition: 'one link parted 30 mm from the clasp' },
      },
      seen: [tell('photo_added', { about: 'piece', photo: { of: 'chain', metal: 'yellow', reading: '11.47' }, shows: 'pan' })],
      work: { steps: ['solder'], price: '£28', promise: '6 days ago' },
    }),
  ),
  at('7 days ago 14:05', TOBIAS, tell('taken', { of: 'job', from: 'the counter' })),
  at(
    '7 days ago 14:25',
    TOBIAS,
    tell('metal_added', { stock: '9ct yellow solder', metal: 'gold-375', weight: '0.02 g by difference', what: 'solder' }),
    tell('piece_weighed', { state: 'finished', weight: '11.48 g' }),
    tell('piece_checked', { stones: 0, seats: 'none', marks: 'readable' }),
    tell('work_finished'),
  ),
  at('6 days ago 15:50', PRIYA, ...goesHome({ stones: 0, weight: '11.48 g', taker: 'Dunstan Oakes' })),
);

export const clasp = story(
  'the clasp',
  at(
    'today 09:35',
    PRIYA,
    ...takesIn({
      customer: { name: 'Ottilie Farr', phone: '07700 900143' },
      piece: {
        ...{
          kind: 'bracelet',
          description: 'Belcher bracelet, clasp will not close, silver',
          parts: [{ part: 'links', metal: 'silver-925' }],
        },
        ...{ stones: 0, weight: '18.63 g', condition: 'bolt ring worn through' },
      },
      seen: [tell('photo_added', { about: 'piece', photo: { of: 'chain', metal: 'silver', reading: '18.63' }, shows: 'pan' })],
      work: { steps: ['clasp'], price: '£22', promise: 'in 3 days' },
    }),
  ),
);
