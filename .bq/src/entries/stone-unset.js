// Stones come out of a piece: one stone by itself, or a group into a packet.
import { defineEntry, observed, optional, ref, refOrBegins, refuse, weight } from '../book/entry.js';
import { flow } from '../book/facts.js';
import { identities } from '../book/given.js';
import { anyStaff } from '../book/may.js';
import { atBench } from '../book/next.js';
import { exactlyOne, notOneStone, pieceIsGone, thingIsGone, workNotAgreed } from '../book/refusals.js';
import { STONE_CONDITIONS } from '../book/stone-words.js';
import { choice, count } from '../book/values.js';
import { after, stonesWords, weightWords } from '../book/words.js';

const INTO = 'Say where they went: one stone by itself, or a packet, and only one of them.';
export const stoneUnset = defineEntry({
  type: 'stone_unset',
  version: 1,
  fields: {
    piece: ref('piece'),
    stone: optional(refOrBegins('stone')),
    packet: optional(refOrBegins('packet')),
    stones: observed(count(999, 1)),
    weight: optional(weight()),
    condition: observed(choice(STONE_CONDITIONS)),
  },
  subject: 'piece',
  may: anyStaff,
  form: {
    title: 'Take stones out',
    labels: {
      piece: 'From which piece',
      stone: 'Which stone',
      packet: 'Or into a packet',
      stones: 'Stones taken out',
      weight: 'Weight, loose',
      condition: 'Condition out of the mount',
    },
  },
  decide({ piece, stone, packet }, data) {
    const refused = pieceIsGone(piece) ?? workNotAgreed(piece) ?? exactlyOne(data.stone, data.packet, 'one_destination', INTO, 'stone');
    if (refused) return refused;
    const gone = stone ?? packet;
    if (gone?.gone) return thingIsGone(gone, gone.kind);
    if (stone?.loose) return refuse('stone_is_loose', 'That stone is out already. Choose the stone that comes out now.', 'stone');
    if (piece.stonesIn !== null && data.stones > piece.stonesIn) {
      return refuse('more_than_are_in', `This piece has ${stonesWords(piece.stonesIn)} in it. Count again, or check the piece.`, 'stones');
    }
    return notOneStone(data.stone, data.stones);
  },
  facts: ({ piece, stone, packet, stones, weight: reading, condition }) =>
    [stone ?? packet].flatMap((to) =>
      to ? [flow(piece, to, { kind: 'stones', count: stones }, reading), ...identities(to, { condition })] : [],
    ),
  say({ stone, packet, stones, weight: reading, condition }, name) {
    const what = stone ? name(stone) : `${stonesWords(stones)}${after(' into ', packet && name(packet))}`;
    return `Taken out: ${what}${weightWords(reading)}, ${STONE_CONDITIONS[condition]}`;
  },
  tell: 'as said',
  next: atBench(6),
});
