// Stones go into a piece: a loose stone whole, or stones out of a packet.
import { defineEntry, observed, optional, ref, refuse, weight } from '../book/entry.js';
import { flow, flowOfWhole } from '../book/facts.js';
import { anyStaff } from '../book/may.js';
import { exactlyOne, notOneStone, pieceIsGone, thingIsGone, workNotAgreed } from '../book/refusals.js';
import { count, text } from '../book/values.js';
import { after, stonesWords, weightWords } from '../book/words.js';

const FROM = 'Say what was set: one stone, or stones from a packet, and only one of them.';
export const stoneSet = defineEntry({
  type: 'stone_set',
  version: 1,
  fields: {
    piece: ref('piece'),
    stone: optional(ref('stone')),
    packet: optional(ref('packet')),
    stones: observed(count(999, 1)),
    left: optional(observed(count())),
    weight: optional(weight()),
    seat: optional(observed(text(80))),
  },
  subject: 'piece',
  may: anyStaff,
  form: {
    title: 'Set stones',
    labels: {
      piece: 'Into which piece',
      stone: 'Which stone',
      packet: 'Or from a packet',
      stones: 'Stones set',
      left: 'Stones left in the packet',
      weight: 'Weight of those set, where some are left',
      seat: 'Which seat',
    },
  },
  decide({ piece, stone, packet }, data) {
    const refused =
      pieceIsGone(piece) ??
      workNotAgreed(piece) ??
      exactlyOne(data.stone, data.packet, 'one_source', FROM, 'stone') ??
      notOneStone(data.stone, data.stones);
    if (refused) return refused;
    const from = stone ?? packet;
    if (from?.gone) return thingIsGone(from, from.kind);
    if (stone && !stone.loose) return refuse('stone_not_loose', 'That stone is not out. Take it out first, or choose another.', 'stone');
    const there = data.stones + (data.left ?? 0);
    const held = packet?.stonesIn ?? 0;
    if (packet && there !== held) {
      return refuse('packet_count_differs', `The packet holds ${stonesWords(held)}. Count those set and those left.`, 'stones');
    }
    return null;
  },
  facts: ({ piece, stone, packet, stones, left, weight: reading }) => {
    const from = stone ?? packet;
    if (!from) return [];
    const matter = { kind: 'stones', count: stones };
    return [packet && left ? flow(from, piece, matter, reading) : flowOfWhole(from, piece, matter)];
  },
  say({ stone, packet, stones, left, weight: reading, seat }, name) {
    const what = stone ? name(stone) : `${stonesWords(stones)}${after(' from ', packet && name(packet))}`;
    return `Set: ${what}${after(', ', seat)}${left ? `${weightWords(reading)}, ${left} left` : ''}`;
  },
  tell: 'as said',
  next: ({ status, isMine, stonesOut }) => (status === 'agreed' ? (isMine && stonesOut > 0 ? 1 : 32) : null),
});
