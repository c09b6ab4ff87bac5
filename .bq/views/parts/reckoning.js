import { Fragment as _Fragment, jsx as _jsx, jsxs as _jsxs } from 'hono/jsx/jsx-runtime';
import { Beam } from './beam.js';
export function Reckoning({ job, reckoned }) {
  const { state, sentence, weights } = reckoned;
  return _jsxs('section', {
    class: 'reckon',
    'aria-labelledby': 'r',
    children: [
      _jsx('h2', { id: 'r', class: 'sr', children: 'The reckoning' }),
      _jsx(Beam, { state: state, tilt: weights.tilt, sentence: sentence }),
      _jsx('dl', { class: 'pans', children: weights.pans.map((pan) => _jsx(PanNumber, { pan: pan })) }),
      _jsxs('p', {
        class: 'sentence',
        children: [sentence, ' ', state === 'off' && _jsx('a', { href: `/jobs/${job}/reckoning`, children: 'Why does it not agree?' })],
      }),
    ],
  });
}
/** A sum and the entries it is made of. */
function PanNumber({ pan: { words, terms, value } }) {
  return _jsxs('div', {
    children: [
      _jsx('dd', { children: value ?? '?' }),
      _jsxs('dt', {
        children: [
          words,
          terms.length > 0 &&
            _jsxs('small', {
              children: [
                terms.length === 1 ? ' entry ' : ' entries ',
                [...new Set(terms.map(({ seq }) => seq))].map((seq, index) =>
                  _jsxs(_Fragment, { children: [index > 0 && ', ', _jsx('a', { href: `/entries/${seq}`, children: seq })] }),
                ),
              ],
            }),
        ],
      }),
    ],
  });
}
