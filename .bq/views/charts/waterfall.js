import { Fragment as _Fragment, jsx as _jsx, jsxs as _jsxs } from 'hono/jsx/jsx-runtime';
import { toStep } from '../../src/units/rounded.js';
import { Bars } from './bars.js';
/** The picture and the table of one job's weights; nothing where it was not weighed as it came in. */
export function Waterfall({ reckoned }) {
  const falls = fallsOf(reckoned);
  if (falls.length === 0) return _jsx('p', { class: 'soft', children: 'Not weighed as it came in: there is nothing to draw.' });
  const title = falls.map(({ words, value }) => `${words} ${value}`).join('; ');
  return _jsxs('figure', {
    class: 'charted',
    children: [
      _jsx(Bars, { title: title, bars: falls }),
      reckoned.weights.dustMost &&
        _jsxs('p', {
          class: 'soft',
          children: ['Such work usually leaves up to ', reckoned.weights.dustMost, ' as dust (', reckoned.weights.usualFrom, ').'],
        }),
      _jsxs('table', {
        children: [
          _jsx('caption', { children: 'The same in figures' }),
          _jsx('tbody', {
            children: falls.map(({ words, value, seqs }) =>
              _jsxs('tr', {
                children: [
                  _jsx('th', { scope: 'row', children: words }),
                  _jsx('td', { class: 'num', children: value }),
                  _jsx('td', {
                    children: seqs.map((seq, index) =>
                      _jsxs(_Fragment, {
                        children: [index > 0 && ', ', _jsxs('a', { href: `/entries/${seq}`, children: ['entry ', seq] })],
                      }),
                    ),
                  }),
                ],
              }),
            ),
          }),
        ],
      }),
    ],
  });
}
const sum = (terms) => terms.reduce((total, { ng }) => total + ng, 0);
const seqsOf = (terms) => [...new Set(terms.map(({ seq }) => seq))];
function fallsOf({ cameIn, added, removed, closed, last, expected, weights }) {
  if (!cameIn) return [];
  const words = (ng) => toStep(ng, weights.stepNg);
  const falls = [];
  let at = cameIn.ng;
  falls.push({ words: 'Came in', value: words(at), from: 0, to: at, kind: 'total', seqs: [cameIn.seq] });
  const move = (said, ng, kind, seqs, sign) => {
    falls.push({ words: said, value: `${sign}${words(Math.abs(ng))}`, from: at, to: at + ng, kind, seqs });
    at += ng;
  };
  if (added.length > 0) move('Added', sum(added), 'in', seqsOf(added), '+\u202f');
  if (removed.length > 0) move('Taken out or off', -sum(removed), 'out', seqsOf(removed), '\u2212\u202f');
  if (!closed || !last || closed.verdict === 'not checked') return [...falls, ...inPiece(expected, words)];
  const gap = weights.lossNg;
  falls.push({
    words: gap < 0 ? 'Too much' : 'Missing',
    value: `${gap < 0 ? '+\u202f' : '\u2212\u202f'}${weights.gap} ± ${weights.give}`,
    from: at,
    to: at - gap,
    kind: closed.verdict === 'does not agree' ? 'off' : 'reckoned',
    give: 2e9 * closed.uG,
    seqs: [],
  });
  return [...falls, { words: 'Weighed last', value: words(last.ng), from: 0, to: last.ng, kind: 'total', seqs: [last.seq] }];
}
const inPiece = (expected, words) =>
  expected
    ? [{ words: 'In the piece, by reckoning', value: words(expected.ng), from: 0, to: expected.ng, kind: 'reckoned', seqs: [] }]
    : [];
