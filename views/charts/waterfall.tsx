// The weights of one job as a fall: from what came in, over what was added and taken off, to what was weighed last and what is left over.
import type { JobReckoning, Term } from '../../src/projections/job-reckoning.ts';
import type { JobWeights } from '../../src/projections/job-weights.ts';
import type { MassNg } from '../../src/units/mass.ts';
import { toStep } from '../../src/units/rounded.ts';
import { type Bar, Bars } from './bars.tsx';

interface Fall extends Bar {
  readonly seqs: readonly number[];
}

/** The picture and the table of one job's weights; nothing where it was not weighed as it came in. */
export function Waterfall({ reckoned }: { readonly reckoned: JobReckoning }) {
  const falls = fallsOf(reckoned);
  if (falls.length === 0) return <p class="soft">Not weighed as it came in: there is nothing to draw.</p>;
  const title = falls.map(({ words, value }) => `${words} ${value}`).join('; ');
  return (
    <figure class="charted">
      <Bars title={title} bars={falls} />
      {reckoned.weights.dustMost && (
        <p class="soft">
          Such work usually leaves up to {reckoned.weights.dustMost} as dust ({reckoned.weights.usualFrom}).
        </p>
      )}
      <table>
        <caption>The same in figures</caption>
        <tbody>
          {falls.map(({ words, value, seqs }) => (
            <tr>
              <th scope="row">{words}</th>
              <td class="num">{value}</td>
              <td>
                {seqs.map((seq, index) => (
                  <>
                    {index > 0 && ', '}
                    <a href={`/entries/${seq}`}>entry {seq}</a>
                  </>
                ))}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </figure>
  );
}

const sum = (terms: readonly Term[]): number => terms.reduce((total, { ng }) => total + ng, 0);
const seqsOf = (terms: readonly Term[]): readonly number[] => [...new Set(terms.map(({ seq }) => seq))];

const BEGAN: Readonly<Record<JobWeights['began'], string>> = {
  'came in': 'Came in',
  'once cleaned': 'Once cleaned',
  'first weighed': 'First weighed',
};

function fallsOf({ cameIn, added, removed, closed, last, expected, weights }: JobReckoning): readonly Fall[] {
  if (!cameIn) return [];
  const words = (ng: number) => toStep(ng, weights.stepNg);
  const falls: Fall[] = [];
  let at: number = cameIn.ng;
  falls.push({ words: BEGAN[weights.began], value: words(at), from: 0, to: at, kind: 'total', seqs: [cameIn.seq] });
  const move = (said: string, ng: number, kind: Bar['kind'], seqs: readonly number[], sign: string) => {
    falls.push({ words: said, value: `${sign}${words(Math.abs(ng))}`, from: at, to: at + ng, kind, seqs });
    at += ng;
  };
  if (added.length > 0) move('Added', sum(added), 'in', seqsOf(added), '+\u202f');
  if (removed.length > 0) move('Taken out or off', -sum(removed), 'out', seqsOf(removed), '\u2212\u202f');
  if (weights.unknown.length > 0)
    falls.push({ words: 'Not weighed', value: 'not known', from: at, to: at, kind: 'reckoned', seqs: weights.unknown });
  if (!closed || !last || closed.verdict === 'not checked') return [...falls, ...inPiece(expected, words)];
  falls.push({
    ...missing(weights),
    from: at,
    to: at - weights.lossNg,
    kind: closed.verdict === 'does not agree' ? 'off' : 'reckoned',
    give: 2e9 * closed.uG,
    seqs: [],
  });
  return [...falls, { words: 'Weighed last', value: words(last.ng), from: 0, to: last.ng, kind: 'total', seqs: [last.seq] }];
}

/** What is left over, on the side it is to the step. */
const missing = ({ side, gap, step, give }: JobWeights): Pick<Fall, 'words' | 'value'> =>
  ({
    less: { words: 'Missing', value: `\u2212\u202f${gap} ± ${give}` },
    more: { words: 'Too much', value: `+\u202f${gap} ± ${give}` },
    none: { words: 'No difference', value: `to ${step}, ± ${give}` },
  })[side];

const inPiece = (expected: { readonly ng: MassNg } | null, words: (ng: number) => string): readonly Fall[] =>
  expected
    ? [{ words: 'In the piece, by reckoning', value: words(expected.ng), from: 0, to: expected.ng, kind: 'reckoned', seqs: [] }]
    : [];
