// The finish of a small job: sized where it was to be sized, weighed out, looked over once more, finished; metal let in or cut out follows by difference.
import { type Data, observed, optional, ref } from '../book/entry.ts';
import type { MetalCode } from '../book/metals.ts';
import { text, tick } from '../book/values.ts';
import { pieceChecked } from '../entries/piece-checked.ts';
import { pieceSized } from '../entries/piece-sized.ts';
import { pieceWeighed } from '../entries/piece-weighed.ts';
import { decimalsOfStep, formatMass, type MassNg, massNg } from '../units/mass.ts';
import { netNg, type Reading } from '../weighing/reading.ts';
import { defineSheet, line, type SheetLine } from './sheet.ts';

/** What the ledger says of the piece before it is finished. */
export interface BeforeFinish {
  readonly heldByMe: boolean;
  readonly stones: number;
  readonly metal: MetalCode;
  readonly expectedNg: MassNg | null;
}

const fields = {
  job: ref('job'),
  piece: ref('piece'),
  method: optional(pieceSized.fields.method),
  from: optional(observed(text(20))),
  to: optional(observed(text(20))),
  stock: optional(ref('stock')),
  lot: optional(ref('lot')),
  weight: pieceWeighed.fields.weight,
  stonesHold: optional(observed(tick())),
  marksHold: optional(observed(tick())),
  stones: optional(pieceChecked.fields.stones),
  seats: optional(pieceChecked.fields.seats),
  marks: optional(pieceChecked.fields.marks),
  note: pieceChecked.fields.note,
} as const;
type Finish = Data<typeof fields>;

export const finish = defineSheet<'finish', typeof fields, BeforeFinish>({
  name: 'finish',
  fields,
  form: {
    title: 'Finish',
    labels: {
      ...{ job: 'Job', piece: 'Piece', method: 'How it was sized', from: 'Size before', to: 'Size on the stick' },
      ...{ stock: 'Metal let in came from', lot: 'Metal cut out went into', weight: 'Weight out' },
      ...{ stonesHold: 'Stones all there and tight', marksHold: 'Marks still readable' },
      ...{ stones: 'Stones counted', seats: 'Seats', marks: 'Marks', note: 'Remarks' },
    },
    sections: [
      ['Sizing', ['method', 'from', 'to', 'stock', 'lot']],
      ['On the pan', ['weight']],
      ['Looked over', ['stonesHold', 'marksHold']],
      ['Something does not hold, or a remark', ['stones', 'seats', 'marks', 'note'], 'folded'],
    ],
    often: { method: ['stretched', 'compressed', 'insert', 'cut', 're-shank', 'bridge'] },
    button: 'Finished',
  },
  check: ({ stonesHold, stones, marksHold, marks, method, to }) => [
    ...(stonesHold || stones !== undefined ? [] : [{ field: 'stonesHold', say: 'Count the stones: tick it, or write what you counted.' }]),
    ...(marksHold || marks !== undefined ? [] : [{ field: 'marksHold', say: 'Look at the marks: tick it, or say how they are.' }]),
    ...(method === undefined || to !== undefined ? [] : [{ field: 'to', say: 'Put it on the stick and write the size.' }]),
  ],
  lines(data, known) {
    const { job, piece, method, from = 'as it came', to = 'as wanted', weight } = data;
    const stones = data.stones ?? known.stones;
    const seats = data.seats ?? (stones === 0 ? 'none' : data.stonesHold ? 'tight' : 'loose');
    return [
      ...(known.heldByMe ? [] : [line('taken', { of: job, from: undefined })]),
      ...(method === undefined ? [] : [line('piece_sized', { piece, method, from, to })]),
      ...metalMoved(data, known),
      line('piece_weighed', { piece, state: 'finished', weight }),
      line('piece_checked', { piece, stones, seats, marks: data.marks ?? 'readable', ringSizeMm: undefined, note: data.note }),
      line('work_finished', { job }),
    ];
  },
});

/** Metal let in from a stock, or cut out into a lot: what the weight out says beyond what was expected. */
function metalMoved({ piece, stock, lot, weight }: Finish, { expectedNg, metal }: BeforeFinish): readonly SheetLine[] {
  const outNg = netNg(weight);
  if (outNg === null || expectedNg === null) return [];
  if (outNg > expectedNg && stock) {
    const added = byDifference(weight, massNg(outNg - expectedNg));
    return [line('metal_added', { piece, stock, packet: undefined, metal, weight: added, what: 'shank' })];
  }
  if (outNg < expectedNg && lot) {
    const cut = byDifference(weight, massNg(expectedNg - outNg));
    return [line('metal_cut', { piece, lot, packet: undefined, metal, weight: cut, part: 'shank', marks: undefined })];
  }
  return [];
}

function byDifference({ unit, stepNg }: Reading, ng: MassNg): Reading {
  const text = formatMass(ng, unit, decimalsOfStep(stepNg ?? ng, unit));
  return { text, unit, ng, basis: 'difference', ...(stepNg === undefined ? {} : { stepNg }) };
}
