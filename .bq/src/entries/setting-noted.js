// What sits in one seat, or in a group of seats, as observed. It tells what is there and moves nothing.
import { begins, defineEntry, observed, optional, ref, refuse } from '../book/entry.js';
import { fact } from '../book/facts.js';
import { identities } from '../book/given.js';
import { anyStaff } from '../book/may.js';
import { pieceIsGone } from '../book/refusals.js';
import { BACKINGS, CUTS, SEAT_STATES, SPECIES } from '../book/stone-words.js';
import { choice, count, decimal, text } from '../book/values.js';
export const settingNoted = defineEntry({
  type: 'setting_noted',
  version: 1,
  fields: {
    piece: ref('piece'),
    stone: optional(begins('stone')),
    packet: optional(begins('packet')),
    seat: observed(text(80)),
    species: observed(choice(SPECIES)),
    cut: optional(observed(choice(CUTS))),
    sizeMm: optional(observed(decimal('mm'))),
    backing: observed(choice(BACKINGS)),
    state: observed(choice(SEAT_STATES)),
    stones: optional(observed(count(999, 1))),
  },
  subject: 'piece',
  may: anyStaff,
  form: {
    title: 'Note a setting',
    labels: {
      piece: 'In which piece',
      stone: 'One stone',
      packet: 'Or a group of seats',
      seat: 'Which seat, or which group',
      species: 'What is it, as observed?',
      cut: 'Cut',
      sizeMm: 'Size in mm',
      backing: 'Backing',
      state: 'State',
      stones: 'How many in the group',
    },
    hints: { species: 'A stone nobody has looked at under the loupe is not known.' },
    cautions: ['unknown-foiled'],
  },
  decide({ piece }, { stone, packet, state, stones }) {
    const gone = pieceIsGone(piece);
    if (gone) return gone;
    if (stone && packet) return refuse('stone_or_group', 'Note one stone or a group of seats, not both at once.', 'packet');
    if (state === 'empty' && (stone || packet)) {
      return refuse('empty_seat_has_stone', 'An empty seat holds no stone. Leave the stone out, or change the state.', 'state');
    }
    if (packet && stones === undefined) return refuse('group_not_counted', 'Count the stones of the group.', 'stones');
    return null;
  },
  facts: ({ piece, stone, packet, seat, species, cut, sizeMm, backing, state, stones }) => {
    const of = stone ?? packet;
    if (!of) return [fact('identity', { of: piece, mark: `seat ${seat}`, says: state })];
    return identities(of, { seat, species, cut, sizeMm, backing, state, noted: stones?.toString() });
  },
  say({ seat, species, cut, sizeMm, state, stones }) {
    if (state === 'empty') return `Noted: ${seat}, empty seat`;
    const what = `${stones === undefined ? '' : `${stones} × `}${SPECIES[species]}`;
    return [`Noted: ${seat}`, what, cut && CUTS[cut], sizeMm && `${sizeMm}\u00a0mm`, SEAT_STATES[state]].filter(Boolean).join(', ');
  },
  tell: 'as said',
  next: ({ status, pieces }) => (status === 'agreed' || (status === 'open' && pieces > 0) ? 21 : null),
});
