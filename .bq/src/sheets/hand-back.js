// Hand-back: a piece goes home, counted out with whoever takes it; with the last piece the job closes. Where something does not agree,
// it goes home with an exception that the customer was told of.
import { optional, ref, stated } from '../book/entry.js';
import { RETURNED_TO, SIGNED } from '../book/hand-back.js';
import { tick } from '../book/values.js';
import { stonesWords } from '../book/words.js';
import { pieceReturned } from '../entries/piece-returned.js';
import { returnedWithException } from '../entries/returned-with-exception.js';
import { defineSheet, line } from './sheet.js';

const closing = { job: ref('job'), packets: optional(stated(tick())), closes: optional(stated(tick())) };
const LABELS = {
  job: 'Job',
  packets: 'Its packets of worn metal and old parts go home too',
  closes: 'This was the last piece: close the job',
};
const fields = { ...closing, ...pieceReturned.fields };
const exceptionFields = { ...closing, ...returnedWithException.fields };
/** What goes home with the piece, and the end of the job once nothing of it is left here. */
function afterwards({ job, packets: go, closes, to, signed }, { packets }) {
  const here = go ? [] : packets;
  return [
    ...(go ? packets.map((packet) => line('old_parts_returned', { packet, to, signed })) : []),
    ...(closes && here.length === 0 ? [line('job_closed', { job })] : []),
  ];
}
export const handBack = defineSheet({
  name: 'hand-back',
  fields,
  form: {
    ...pieceReturned.form,
    labels: { ...LABELS, ...pieceReturned.form.labels },
    sections: [
      ['Counted out together', ['piece', 'stones', 'weight']],
      ['Who takes it', ['to', 'taker', 'shown', 'signed', 'packets', 'closes']],
    ],
    button: 'Hand it back',
  },
  readBack: ({ stones, to, shown, signed, packets }, { sentence }) => [
    sentence,
    `${stonesWords(stones)} counted out.${packets ? ' Its packets go with it.' : ''}`,
    `It goes ${RETURNED_TO[to]}, who showed: ${shown}. ${SIGNED[signed].replace(/^./, (letter) => letter.toUpperCase())}.`,
  ],
  lines: ({ job, packets, closes, ...returned }, known) => [
    line('piece_returned', returned),
    ...afterwards({ job, packets, closes, to: returned.to, signed: returned.signed }, known),
  ],
});
export const handBackWithException = defineSheet({
  name: 'hand-back-with-exception',
  fields: exceptionFields,
  form: {
    ...returnedWithException.form,
    labels: { ...LABELS, ...returnedWithException.form.labels },
    sections: [
      ['Counted out together', ['piece', 'stones', 'weight', 'exception']],
      ['Who takes it', ['to', 'taker', 'shown', 'signed', 'packets', 'closes']],
    ],
    button: 'Hand it back with the exception',
  },
  readBack: ({ stones, to, shown, exception }, { sentence }) => [
    sentence,
    `${stonesWords(stones)} counted out. What does not agree: ${exception}`,
    `It goes ${RETURNED_TO[to]}, who showed: ${shown}. They were told what does not agree, and signed.`,
  ],
  lines: ({ job, packets, closes, ...returned }, known) => [
    line('returned_with_exception', returned),
    ...afterwards({ job, packets, closes, to: returned.to, signed: 'signature' }, known),
  ],
});
