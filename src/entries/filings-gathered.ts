// Filings of one job, swept up by themselves and weighed: into a scrap lot, or into a packet that goes home with the customer.
import { ask, defineEntry, observed, optional, ref, refOrBegins, weight } from '../book/entry.ts';
import { flow } from '../book/facts.ts';
import { given } from '../book/given.ts';
import { outweighs } from '../book/holding.ts';
import { anyStaff } from '../book/may.ts';
import { METAL_WORDS } from '../book/metals.ts';
import { atBench } from '../book/next.ts';
import { exactlyOne, lotIsSealed, pieceIsGone, thingIsGone, workNotAgreed } from '../book/refusals.ts';
import { choice } from '../book/values.ts';
import { weightWords } from '../book/words.ts';

const INTO = 'Say where the filings went: a scrap lot or a packet, and only one of them.';

export const filingsGathered = defineEntry({
  type: 'filings_gathered',
  version: 1,
  fields: {
    piece: ref('piece'),
    metal: observed(choice(METAL_WORDS)),
    weight: weight(),
    lot: optional(ref('lot')),
    packet: optional(refOrBegins('packet')),
  },
  subject: 'piece',
  may: anyStaff,
  form: {
    title: 'Gather the filings of this job',
    labels: {
      piece: 'From which piece',
      metal: 'Metal',
      weight: 'Weight of the filings',
      lot: 'Into the scrap lot',
      packet: 'Or into a packet for the customer',
    },
    cautions: ['dust'],
  },
  decide({ piece, lot, packet }, data) {
    const refused = pieceIsGone(piece) ?? workNotAgreed(piece) ?? exactlyOne(data.lot, data.packet, 'one_destination', INTO, 'lot');
    return refused ?? (lot ? lotIsSealed(lot) : packet ? thingIsGone(packet, 'packet') : null);
  },
  doubt({ piece }, { weight: reading }) {
    if (outweighs(reading, piece)) {
      return ask('filings_exceed_piece', 'These filings weigh more than the piece. Weigh them again and say why.', 'weight');
    }
    return null;
  },
  facts: ({ piece, metal, weight: reading, lot, packet }) =>
    given(lot ?? packet, (to) => flow(piece, to, { kind: 'metal', metal }, reading)),
  say: ({ metal, weight: reading }) => `Filings gathered: ${METAL_WORDS[metal]}${weightWords(reading)}`,
  tell: ({ metal }) => `Filings gathered: ${METAL_WORDS[metal]}`,
  next: atBench(9.5),
});
