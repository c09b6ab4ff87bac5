// The finish of a small job: sized where it was to be sized, weighed out, looked over once more, finished. Metal let in or cut out is
// written only where the method moves metal and none was entered yet; by difference only where the sizes explain it.
import { observed, optional, ref, refOrBegins } from '../book/entry.js';
import { tick } from '../book/values.js';
import { pieceChecked } from '../entries/piece-checked.js';
import { pieceSized } from '../entries/piece-sized.js';
import { pieceWeighed } from '../entries/piece-weighed.js';
import { isSameSize, METHOD_MOVES, metalMoved, oddDifference, wrongWay } from './metal-moved.js';
import { defineSheet, line } from './sheet.js';

const fields = {
  job: ref('job'),
  piece: ref('piece'),
  method: optional(pieceSized.fields.method),
  from: optional(pieceSized.fields.from),
  to: optional(pieceSized.fields.to),
  stock: optional(ref('stock')),
  lot: optional(ref('lot')),
  packet: optional(refOrBegins('packet')),
  moved: optional(pieceWeighed.fields.weight),
  weight: pieceWeighed.fields.weight,
  stonesHold: optional(observed(tick())),
  marksHold: optional(observed(tick())),
  stones: optional(pieceChecked.fields.stones),
  seats: optional(pieceChecked.fields.seats),
  marks: optional(pieceChecked.fields.marks),
  note: pieceChecked.fields.note,
};
export const finish = defineSheet({
  name: 'finish',
  fields,
  form: {
    title: 'Finish',
    labels: {
      ...{ job: 'Job', piece: 'Piece', method: 'How it was sized', from: 'Size before', to: 'Size on the stick' },
      ...{ stock: 'Metal let in came from', lot: 'Metal cut out went into', packet: 'Its packet', weight: 'Weight out' },
      ...{ moved: 'Weight of what was let in or cut out' },
      ...{ stonesHold: 'Stones all there and tight', marksHold: 'Marks still readable' },
      ...{ stones: 'Stones counted', seats: 'Seats', marks: 'Marks', note: 'Remarks' },
    },
    hints: { moved: 'Weighed by itself it checks the weight out. Left empty it is taken from the weight out, which then checks nothing.' },
    sections: [
      ['Sizing', ['method', 'from', 'to', 'stock', 'lot', 'packet']],
      ['The piece let in or cut out, weighed', ['moved'], 'folded'],
      ['On the pan', ['weight']],
      ['Looked over', ['stonesHold', 'marksHold']],
      ['Something does not hold, or a remark', ['stones', 'seats', 'marks', 'note'], 'folded'],
    ],
    often: { method: ['stretched', 'compressed', 'insert', 'cut', 're-shank', 'bridge'] },
    weighs: { weight: 'piece' },
    button: 'Finished',
  },
  check: (data, known) => [...lookedOver(data, known), ...sizedAsAgreed(data, known), ...metalIsSaid(data, known)],
  ask: (data, known) => oddDifference(partOf(data, known), data.weight),
  lines(data, known) {
    const { job, piece, method, from = '', to = '', weight } = data;
    const stones = data.stones ?? known.stones;
    const seats = data.seats ?? (stones === 0 ? 'none' : 'tight');
    return [
      ...(known.heldByMe ? [] : [line('taken', { of: job, from: undefined })]),
      ...(method === undefined ? [] : [line('piece_sized', { piece, method, from, to })]),
      ...metalLine(data, known),
      line('piece_weighed', { piece, state: 'finished', weight }),
      line('piece_checked', { piece, stones, seats, marks: data.marks ?? 'readable', ringSizeMm: undefined, note: data.note }),
      line('work_finished', { job }),
    ];
  },
});
const wrong = (field, isWrong, say) => (isWrong ? [{ field, say }] : []);
const lookedOver = ({ stonesHold, stones, seats, marksHold, marks }, known) => [
  ...wrong('stonesHold', !stonesHold && stones === undefined, 'Count the stones: tick it, or write what you counted.'),
  ...wrong('seats', !stonesHold && (stones ?? known.stones) > 0 && seats === undefined, 'Look at the seats and say how they are.'),
  ...wrong('marksHold', !marksHold && marks === undefined, 'Look at the marks: tick it, or say how they are.'),
];
/** What was agreed and what is on the stick differ only with a remark that says why. */
function sizedAsAgreed({ method, from, to, note }, { isSizing, wanted, sized }) {
  const now = to ?? sized;
  const differs = wanted !== '' && now !== '' && !isSameSize(wanted, now);
  return [
    ...wrong(
      'method',
      isSizing && method === undefined && sized === '' && note === undefined,
      'A sizing was agreed. Say how it was sized, or say under Remarks why it was not.',
    ),
    ...wrong('from', method !== undefined && from === undefined, 'Write the size before.'),
    ...wrong('to', method !== undefined && to === undefined, 'Put it on the stick and write the size.'),
    ...wrong(
      'method',
      method !== undefined && wrongWay(method, from, to),
      `That does not lead from ${from} to ${to}. Check the sizes and the method.`,
    ),
    ...wrong(
      'to',
      differs && note === undefined,
      `${wanted} was agreed and ${now} is on the stick. Size it again, or say under Remarks what the customer agreed to.`,
    ),
  ];
}
/** Where the metal came from or went is said, and a new shank, which moves both ways, stands in entries of its own. */
function metalIsSaid({ method, stock, lot }, { moved, cutMetal }) {
  const way = method === undefined || moved ? 'none' : METHOD_MOVES[method];
  return [
    ...wrong(
      'method',
      way === 'both',
      'A new shank moves metal both ways. Write what was cut away and what was let in first, each weighed.',
    ),
    ...wrong(
      'stock',
      way === 'in' && stock === undefined,
      'Say which stock it came from. One that is not listed yet is begun by receiving metal.',
    ),
    ...wrong(
      'lot',
      way === 'out' && cutMetal === 'shop' && lot === undefined,
      'Say which lot it went into. One that is not listed yet is opened in Setup.',
    ),
  ];
}
/** The metal that this finish moves, as it is said or follows. */
function partOf({ method, from, to, moved, weight }, known) {
  const way = method === undefined || known.moved ? 'none' : METHOD_MOVES[method];
  return way === 'in' || way === 'out' ? metalMoved({ way, from, to, moved, weight }, known) : null;
}
function metalLine(data, known) {
  const part = partOf(data, known);
  if (!part) return [];
  const { piece } = data;
  const said = { piece, metal: known.metal, weight: part.weight };
  if (part.way === 'in') return [line('metal_added', { ...said, stock: data.stock, packet: undefined, what: 'shank' })];
  const to = known.cutMetal === 'customer' ? { packet: data.packet, lot: undefined } : { lot: data.lot, packet: undefined };
  return [line('metal_cut', { ...said, ...to, part: 'shank', marks: undefined })];
}
