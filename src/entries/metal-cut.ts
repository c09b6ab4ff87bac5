// Worn metal is cut from a piece, into a scrap lot or a packet that goes home with the customer.
import { ask, defineEntry, observed, optional, ref, refOrBegins, weight } from '../book/entry.ts';
import { flow } from '../book/facts.ts';
import { given } from '../book/given.ts';
import { outweighs } from '../book/holding.ts';
import { anyStaff } from '../book/may.ts';
import { METAL_WORDS } from '../book/metals.ts';
import { atBench } from '../book/next.ts';
import { exactlyOne, lotIsSealed, pieceIsGone, thingIsGone, workNotAgreed } from '../book/refusals.ts';
import { choice, text } from '../book/values.ts';
import { after, weightWords } from '../book/words.ts';

const INTO = 'Say where the metal went: a scrap lot or a packet, and only one of them.';

export const metalCut = defineEntry({
  type: 'metal_cut',
  version: 1,
  fields: {
    piece: ref('piece'),
    metal: observed(choice(METAL_WORDS)),
    weight: optional(weight()),
    lot: optional(ref('lot')),
    packet: optional(refOrBegins('packet')),
    part: optional(observed(text(80))),
    marks: optional(observed(text(200))),
  },
  subject: 'piece',
  may: anyStaff,
  form: {
    title: 'Cut worn metal away',
    labels: {
      piece: 'From which piece',
      metal: 'Metal',
      weight: 'Weight of what was cut',
      lot: 'Into the scrap lot',
      packet: 'Or into a packet for the customer',
      part: 'Which part was cut',
      marks: 'Marks on what was cut',
    },
    hints: { marks: 'A mark in the cut is kept with it: read it before it goes.' },
    cautions: ['mark-in-cut', 'hallmark-deface'],
  },
  decide({ piece, lot, packet }, data) {
    const refused = pieceIsGone(piece) ?? workNotAgreed(piece) ?? exactlyOne(data.lot, data.packet, 'one_destination', INTO, 'lot');
    return refused ?? (lot ? lotIsSealed(lot) : packet ? thingIsGone(packet, 'packet') : null);
  },
  doubt({ piece }, { weight: reading }) {
    if (outweighs(reading, piece)) {
      return ask('cut_exceeds_piece', 'More was cut than the piece weighs. Weigh it again and say why.', 'weight');
    }
    return null;
  },
  facts: ({ piece, metal, weight: reading, lot, packet }) =>
    given(lot ?? packet, (to) => flow(piece, to, { kind: 'metal', metal }, reading)),
  say: ({ metal, weight: reading, part }) => `Cut away${after(' ', part)}: ${METAL_WORDS[metal]}${weightWords(reading)}`,
  tell: ({ metal }) => `Worn metal removed: ${METAL_WORDS[metal]}`,
  next: atBench(8),
});
