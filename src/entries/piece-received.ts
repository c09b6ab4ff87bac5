// A piece comes in, as observed: what it is, its parts and their metal, its stones counted, its weight as received.
import { begins, defineEntry, observed, optional, ref, refuse, weight } from '../book/entry.ts';
import { fact, flow } from '../book/facts.ts';
import { METAL_WORDS } from '../book/metals.ts';
import { PIECE_KINDS } from '../book/pieces.ts';
import { choice, count, decimal, group, lines, list, text } from '../book/values.ts';
import { readingWords } from '../weighing/reading.ts';

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
  },
  decide({ job }) {
    if (job.status === 'closed' || job.status === 'withdrawn') {
      return refuse('job_is_closed', 'This job is closed. Open a new job for the piece.', 'job');
    }
    return null;
  },
  facts: ({ piece, kind, description, stones, weight: reading, parts }, { by }) => [
    flow('outside', piece, { kind: 'mixed' }, reading),
    fact('count', { of: piece, stones }),
    fact('identity', { of: piece, mark: 'kind', says: kind }),
    fact('identity', { of: piece, mark: 'description', says: description }),
    fact('identity', { of: piece, mark: 'metal', says: parts[0]?.metal ?? 'other' }),
    fact('custody', { of: piece, is: 'with', holder: by }),
    ...(reading ? [fact('reading', { of: piece, state: 'as received', reading })] : []),
  ],
  say: ({ description, stones, weight: reading }) =>
    `Received: ${description}, ${stones === 1 ? '1 stone' : `${stones} stones`}${reading ? `, ${readingWords(reading)}` : ', not weighed'}`,
});
