// Hand-back: a piece goes home, counted out with whoever takes it; with the last piece the job closes. Where something does not agree,
// it goes home with an exception that the customer was told of.
import { optional, ref, stated } from '../book/entry.ts';
import { RETURNED_TO, SIGNED } from '../book/hand-back.ts';
import { tick } from '../book/values.ts';
import { stonesWords } from '../book/words.ts';
import { pieceReturned } from '../entries/piece-returned.ts';
import { returnedWithException } from '../entries/returned-with-exception.ts';
import { defineSheet, line } from './sheet.ts';

const closing = { job: ref('job'), closes: optional(stated(tick())) } as const;
const CLOSES = 'This was the last piece: close the job';
const fields = { ...closing, ...pieceReturned.fields } as const;
const exceptionFields = { ...closing, ...returnedWithException.fields } as const;
/** The one sentence on what came in and what goes out. */
interface InAndOut {
  readonly sentence: string;
}

export const handBack = defineSheet<'hand-back', typeof fields, InAndOut>({
  name: 'hand-back',
  fields,
  form: {
    ...pieceReturned.form,
    labels: { job: 'Job', ...pieceReturned.form.labels, closes: CLOSES },
    sections: [
      ['Counted out together', ['piece', 'stones', 'weight']],
      ['Who takes it', ['to', 'taker', 'shown', 'signed', 'closes']],
    ],
    button: 'Hand it back',
  },
  readBack: ({ stones, to, shown, signed }, { sentence }) => [
    sentence,
    `${stonesWords(stones)} counted out.`,
    `It goes ${RETURNED_TO[to]}, who showed: ${shown}. ${SIGNED[signed].replace(/^./, (letter) => letter.toUpperCase())}.`,
  ],
  lines: ({ job, closes, ...returned }) => [line('piece_returned', returned as never), ...(closes ? [line('job_closed', { job })] : [])],
});

export const handBackWithException = defineSheet<'hand-back-with-exception', typeof exceptionFields, InAndOut>({
  name: 'hand-back-with-exception',
  fields: exceptionFields,
  form: {
    ...returnedWithException.form,
    labels: { job: 'Job', ...returnedWithException.form.labels, closes: CLOSES },
    sections: [
      ['Counted out together', ['piece', 'stones', 'weight', 'exception']],
      ['Who takes it', ['to', 'taker', 'shown', 'signed', 'closes']],
    ],
    button: 'Hand it back with the exception',
  },
  readBack: ({ stones, to, shown, exception }, { sentence }) => [
    sentence,
    `${stonesWords(stones)} counted out. What does not agree: ${exception}`,
    `It goes ${RETURNED_TO[to]}, who showed: ${shown}. They were told what does not agree, and signed.`,
  ],
  lines: ({ job, closes, ...returned }) => [
    line('returned_with_exception', returned as never),
    ...(closes ? [line('job_closed', { job })] : []),
  ],
});
