// The weights of one job as a fall: from what came in, over what was added and taken off, to what was weighed last and what is left over.
import type { JobReckoning, Term } from '../../src/projections/job-reckoning.ts';
import { decimalsOfStep, formatMassWithUnit, type MassNg, massNg } from '../../src/units/mass.ts';
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

function fallsOf({ cameIn, added, removed, closed, last, expected, work }: JobReckoning): readonly Fall[] {
  if (!cameIn) return [];
  const stepNg = massNg(closed?.stepNg || (cameIn.stepNg ?? 10_000_000));
  const words = (ng: number) => formatMassWithUnit(massNg(Math.round(ng)), 'g', decimalsOfStep(stepNg, 'g'));
  const falls: Fall[] = [];
  let at: number = cameIn.ng;
  falls.push({ words: 'Came in', value: words(at), from: 0, to: at, kind: 'total', seqs: [cameIn.seq] });
  const move = (said: string, ng: number, kind: Bar['kind'], seqs: readonly number[], sign: string) => {
    falls.push({ words: said, value: `${sign}${words(Math.abs(ng))}`, from: at, to: at + ng, kind, seqs });
    at += ng;
  };
  if (added.length > 0) move('Added', sum(added), 'in', seqsOf(added), '+\u202f');
  if (removed.length > 0) move('Taken out or off', -sum(removed), 'out', seqsOf(removed), '\u2212\u202f');
  if (!closed || !last || closed.verdict === 'not checked') return [...falls, ...inPiece(expected, words)];
  const usualNg = Math.round(1e9 * (work?.usual.meanG ?? 0));
  if (usualNg > 0) move('Usual dust of such work, reckoned', -usualNg, 'reckoned', [], '\u2212\u202f');
  const gap = closed.lossNg - usualNg;
  const give = 2e9 * Math.hypot(closed.uG, work?.usual.tauG ?? 0);
  const sign = gap < 0 ? '+\u202f' : '\u2212\u202f';
  const limit = words(Math.ceil(give / stepNg) * stepNg);
  const kind = closed.verdict === 'does not agree' ? 'off' : 'reckoned';
  falls.push({
    words: 'Left over, unexplained',
    value: `${sign}${words(Math.abs(gap))} ± ${limit}`,
    from: at,
    to: at - gap,
    kind,
    give,
    seqs: [],
  });
  return [...falls, { words: 'Weighed last', value: words(last.ng), from: 0, to: last.ng, kind: 'total', seqs: [last.seq] }];
}

const inPiece = (expected: { readonly ng: MassNg } | null, words: (ng: number) => string): readonly Fall[] =>
  expected
    ? [{ words: 'In the piece, by reckoning', value: words(expected.ng), from: 0, to: expected.ng, kind: 'reckoned', seqs: [] }]
    : [];
