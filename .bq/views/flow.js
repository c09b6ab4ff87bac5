import { Fragment as _Fragment, jsx as _jsx, jsxs as _jsxs } from 'hono/jsx/jsx-runtime';
// Metal through the shop over a period in fine grams, one metal at a time, and the bench skins against the jobs above them.
import { Stream } from './charts/stream.js';
import { Period } from './parts/period.js';
export function FlowView({ from, to, metals, skins }) {
  return _jsxs(_Fragment, {
    children: [
      _jsxs('section', {
        class: 'head',
        children: [
          _jsx('h1', { children: 'Metal through the shop' }),
          _jsx(Period, { action: '/flow', from: from, to: to }),
          _jsx('p', { class: 'soft', children: 'In fine grams: each weight times the fineness it is marked with. A mark is no assay.' }),
        ],
      }),
      metals.length === 0 && _jsx('p', { class: 'sentence', children: 'No metal moved in these days.' }),
      metals.map((one) => _jsx(Metal, { ...one })),
      _jsxs('section', {
        class: 'block',
        children: [
          _jsx('h2', { children: 'Bench skins' }),
          skins.length === 0 &&
            _jsx('p', { class: 'soft', children: 'No skin has been weighed twice yet. Weigh what lies in it once a week.' }),
          skins.map(({ words, href, says }) =>
            _jsxs(_Fragment, {
              children: [
                _jsx('h3', { children: _jsx('a', { href: href, children: words }) }),
                _jsx('ul', { class: 'said', children: says.map((line) => _jsx('li', { children: line })) }),
              ],
            }),
          ),
        ],
      }),
    ],
  });
}
function Metal({ metal, layers, bands, rows, holdings, unknown }) {
  return _jsxs('section', {
    class: 'block',
    children: [
      _jsx('h2', { children: metal }),
      _jsxs('figure', {
        class: 'charted',
        children: [
          _jsx(Stream, {
            title: `${metal}: ${rows.map(({ words, fine }) => `${words} ${fine}`).join('; ')}`,
            layers: layers,
            bands: bands,
          }),
          _jsxs('table', {
            children: [
              _jsx('caption', { children: 'The same in figures' }),
              _jsx('tbody', {
                children: rows.map(({ words, fine, how, seqs }) =>
                  _jsxs('tr', {
                    children: [
                      _jsxs('th', {
                        scope: 'row',
                        children: [
                          words,
                          _jsx('br', {}),
                          _jsxs('small', {
                            children: [
                              how,
                              seqs
                                .slice(0, 12)
                                .map((seq) => _jsxs(_Fragment, { children: [' ', _jsx('a', { href: `/entries/${seq}`, children: seq })] })),
                              seqs.length > 12 && ` and ${seqs.length - 12} more`,
                            ],
                          }),
                        ],
                      }),
                      _jsx('td', { class: 'num', children: fine }),
                    ],
                  }),
                ),
              }),
            ],
          }),
        ],
      }),
      holdings.length > 0 &&
        _jsxs('table', {
          children: [
            _jsx('caption', { children: 'In the holdings by the entries, in fine grams' }),
            _jsx('thead', {
              children: _jsxs('tr', {
                children: [
                  _jsx('th', { scope: 'col', children: 'Holding' }),
                  _jsx('th', { scope: 'col', children: 'At the beginning' }),
                  _jsx('th', { scope: 'col', children: 'At the end' }),
                ],
              }),
            }),
            _jsx('tbody', {
              children: holdings.map(({ words, href, opening, closing }) =>
                _jsxs('tr', {
                  children: [
                    _jsx('th', { scope: 'row', children: _jsx('a', { href: href, children: words }) }),
                    _jsx('td', { class: 'num', children: opening }),
                    _jsx('td', { class: 'num', children: closing }),
                  ],
                }),
              ),
            }),
          ],
        }),
      unknown.length > 0 &&
        _jsxs('p', { class: 'soft', children: ['Of no known fineness, and not counted: entries ', unknown.join(', '), '.'] }),
    ],
  });
}
