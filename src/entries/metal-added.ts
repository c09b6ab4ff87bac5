// Metal goes into a piece, from the shop's stock or from a packet of the customer's own gold.
import { ask, defineEntry, observed, optional, ref, weight } from '../book/entry.ts';
import { flow } from '../book/facts.ts';
import { given } from '../book/given.ts';
import { outweighs } from '../book/holding.ts';
import { anyStaff } from '../book/may.ts';
import { METAL_WORDS } from '../book/metals.ts';
import { atBench } from '../book/next.ts';
import { exactlyOne, onHold, pieceIsGone, thingIsGone, workNotAgreed } from '../book/refusals.ts';
import { choice } from '../book/values.ts';
import { weightWords } from '../book/words.ts';

const WHAT = { wire: 'wire', sheet: 'sheet', solder: 'solder', claw: 'claw', bezel: 'bezel', shank: 'shank', other: 'other' } as const;
const SOURCE = 'Say where the metal came from: a stock or the customer’s own packet, and only one of them.';

export const metalAdded = defineEntry({
  type: 'metal_added',
  version: 1,
  fields: {
    piece: ref('piece'),
    stock: optional(ref('stock')),
    packet: optional(ref('packet')),
    metal: observed(choice(METAL_WORDS)),
    weight: optional(weight()),
    what: observed(choice(WHAT)),
  },
  subject: 'piece',
  may: anyStaff,
  form: {
    title: 'Add metal',
    labels: {
      piece: 'To which piece',
      stock: 'From stock',
      packet: 'Or from the customer’s own gold',
      metal: 'Metal',
      weight: 'Weight of what went in',
      what: 'What was added',
    },
    cautions: ['hallmark-addition', 'bought-in-metal-in-heirloom', 'own-gold-recast', 'nickel'],
  },
  decide({ piece, stock, packet }, data, { today }) {
    const refused = pieceIsGone(piece) ?? workNotAgreed(piece) ?? exactlyOne(data.stock, data.packet, 'one_source', SOURCE, 'stock');
    if (refused) return refused;
    if (packet?.gone) return thingIsGone(packet, 'packet');
    return stock ? onHold(stock, today, 'stock') : null;
  },
  doubt({ stock, packet }, { weight: reading }) {
    const source = stock ?? packet;
    if (source && outweighs(reading, source)) {
      return ask('added_exceeds_source', 'More was added than should be there. Weigh it again and say why.', 'weight');
    }
    return null;
  },
  facts: ({ piece, stock, packet, metal, weight: reading }) =>
    given(stock ?? packet, (from) => flow(from, piece, { kind: 'metal', metal }, reading)),
  say: ({ packet, metal, weight: reading, what }) =>
    `Added${packet ? ', own gold' : ''}: ${WHAT[what]}, ${METAL_WORDS[metal]}${weightWords(reading)}`,
  tell: ({ packet, metal }) => `Metal added${packet ? ', your own' : ''}: ${METAL_WORDS[metal]}`,
  next: atBench(9),
});
