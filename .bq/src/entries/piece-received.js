// A piece comes in, as observed: what it is, its parts and their metal, its stones counted, its weight as received.
import { begins, defineEntry, observed, optional, ref, weight } from '../book/entry.js';
import { fact, flow } from '../book/facts.js';
import { given, identities } from '../book/given.js';
import { anyStaff } from '../book/may.js';
import { METAL_WORDS } from '../book/metals.js';
import { PIECE_KINDS } from '../book/pieces.js';
import { jobIsClosed } from '../book/refusals.js';
import { choice, count, decimal, group, lines, list, text } from '../book/values.js';
import { stonesWords, weightWords } from '../book/words.js';
export const pieceReceived = defineEntry({
  type: 'piece_received',
  version: 1,
  fields: {
    job: ref('job'),
    piece: begins('piece'),
    kind: observed(choice(PIECE_KINDS)),
    description: observed(text(200)),
    parts: observed(
      list(group({ part: { label: 'Part', of: text(40) }, metal: { label: 'Metal, as marked', of: choice(METAL_WORDS) } }), 8),
    ),
    stones: observed(count()),
    weight: optional(weight()),
    ringSizeMm: optional(observed(decimal('mm'))),
    condition: optional(observed(lines(1000))),
  },
  subject: 'job',
  may: anyStaff,
  form: {
    title: 'Receive a piece',
    labels: {
      job: 'Job',
      piece: 'Piece',
      kind: 'What is it?',
      description: 'In a few words',
      parts: 'Parts and their metal',
      stones: 'Stones in it, counted with the customer',
      weight: 'Weight as received',
      ringSizeMm: 'Ring size, inside circumference in mm',
      condition: 'Condition, by position',
    },
    cautions: ['contents-unopened'],
  },
  decide: ({ job }) => jobIsClosed(job),
  facts: ({ piece, kind, description, stones, weight: reading, parts, ringSizeMm }, { by }) => [
    flow('outside', piece, { kind: 'mixed' }, reading),
    fact('count', { of: piece, stones }),
    ...identities(piece, { kind, description, metal: parts[0]?.metal ?? 'other', ringSizeMm }),
    fact('custody', { of: piece, is: 'with', holder: by }),
    ...given(reading, (shown) => fact('reading', { of: piece, state: 'as received', reading: shown })),
  ],
  say: ({ description, stones, weight: reading }) => `Received: ${description}, ${stonesWords(stones)}${weightWords(reading)}`,
  tell: 'as said',
  next: ({ status, pieces }) => (status === 'open' ? (pieces === 0 ? 1 : 24) : null),
});
