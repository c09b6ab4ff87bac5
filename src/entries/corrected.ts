// One observation of an entry already written is said anew; the entry itself stands as it was.
import { defineEntry, optional, ref, refuse, sealed, stated } from '../book/entry.ts';
import { fact } from '../book/facts.ts';
import { surer } from '../book/may.ts';
import { any, count, lines, text } from '../book/values.ts';

export const corrected = defineEntry({
  type: 'corrected',
  version: 1,
  fields: {
    target: ref('entry'),
    seq: stated(count(Number.MAX_SAFE_INTEGER)),
    field: stated(text(60)),
    was: optional(sealed('as its target', stated(any()))),
    is: optional(sealed('as its target', stated(any()))),
    reason: stated(lines(500)),
  },
  subject: 'target',
  may: ({ target: { may, by, afterHandBack } }, _data, asker) => ({
    roles: may.roles,
    asks: by === asker.by && !afterHandBack ? may.asks : surer(may.asks, 'pin'),
  }),
  form: {
    title: 'Correct an entry',
    labels: { target: 'Entry', seq: 'Its number', field: 'Which part of it', was: 'What it says', is: 'What it should say', reason: 'Why' },
    hints: { reason: 'The customer may read this: no names.' },
  },
  ownPage: true,
  decide({ target }, { seq, field, was, is }) {
    if (seq !== target.seq) return refuse('other_number', `That entry is number ${target.seq}. Open the entry to correct it.`, 'seq');
    const part = target.fields.find(({ name }) => name === field);
    if (!part) return refuse('no_such_field', 'That entry has no such part. Choose one of its parts.', 'field');
    if (!part.correctable) {
      return refuse('not_correctable', 'This was said or agreed, and is not corrected: write a new entry that says it anew.', 'field');
    }
    if (was === undefined && is === undefined) return refuse('nothing_given', 'Give what it should say.', 'is');
    if (!part.says(was)) return refuse('says_otherwise', 'The entry says something else by now. Look at it again.', 'was');
    if (part.says(is)) return refuse('nothing_changes', 'It says that already. Give what it should say.', 'is');
    if (!part.takes(is)) return refuse('not_taken', 'That cannot stand there. Write it as the entry’s own form asks.', 'is');
    return null;
  },
  facts: ({ target, field, is }) => [fact('correction', { of: target, field, ...(is === undefined ? {} : { is }) })],
  say: ({ seq, field, reason }) => `Corrected entry ${seq}, ${field}: ${reason}`,
  tell: ({ seq, reason }) => `Correction of entry ${seq}: ${reason}`,
});
