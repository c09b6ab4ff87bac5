// Hand-back: a piece goes home, counted out with whoever takes it; with the last piece the job closes.
import { optional, ref, stated } from '../book/entry.ts';
import { tick } from '../book/values.ts';
import { pieceReturned } from '../entries/piece-returned.ts';
import { defineSheet, line } from './sheet.ts';

export const handBack = defineSheet({
  name: 'hand-back',
  fields: { job: ref('job'), ...pieceReturned.fields, closes: optional(stated(tick())) },
  form: {
    ...pieceReturned.form,
    labels: { job: 'Job', ...pieceReturned.form.labels, closes: 'This was the last piece: close the job' },
    button: 'Hand it back',
  },
  lines: ({ job, closes, ...returned }) => [line('piece_returned', returned), ...(closes ? [line('job_closed', { job })] : [])],
});
