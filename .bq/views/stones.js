import { Fragment as _Fragment, jsx as _jsx, jsxs as _jsxs } from 'hono/jsx/jsx-runtime';
// The stones of a job: the seats drawn in a row, and each with its paper and what was done to it.
import { Diagram } from './charts/seats.js';
export function StonesView({ job, bag, rows, counted, trouble, doing }) {
  return _jsxs(_Fragment, {
    children: [
      _jsxs('section', {
        class: 'head',
        children: [
          _jsxs('p', { class: 'soft', children: ['Bag', ' ', _jsx('a', { class: 'mini', href: `/jobs/${job}`, children: bag })] }),
          _jsx('h1', { children: 'Stones' }),
          _jsx('p', { class: 'sentence', children: counted }),
          trouble.map(({ seq, say }) =>
            _jsxs('p', {
              class: 'off-words',
              role: 'alert',
              children: [
                _jsx('b', { children: 'The count does not agree.' }),
                ' ',
                say,
                ' ',
                _jsxs('a', { href: `/entries/${seq}`, children: ['Entry ', seq] }),
              ],
            }),
          ),
        ],
      }),
      _jsxs('div', {
        class: 'stones',
        children: [
          _jsxs('section', {
            'aria-labelledby': 'seats',
            children: [
              _jsx('h2', { id: 'seats', children: 'Seat by seat' }),
              rows.length === 0
                ? _jsx('p', { class: 'soft', children: 'No seats are noted yet. Note the first setting, from the middle outwards.' })
                : _jsx(List, { rows: rows }),
            ],
          }),
          rows.length > 0 && _jsx(Diagram, { rows: rows }),
        ],
      }),
      _jsx('ul', {
        class: 'links',
        children: doing.map(([href, words]) => _jsx('li', { children: _jsx('a', { href: href, children: words }) })),
      }),
    ],
  });
}
function List({ rows }) {
  return _jsx('ol', {
    class: 'ledger',
    children: rows.map((row) =>
      _jsxs('li', {
        children: [
          _jsxs('b', { children: [row.letter && `${row.letter} · `, row.seat || 'seat not noted', ': ', row.what] }),
          _jsx('span', { class: 'num where', children: row.where === 'out' ? `out, in paper ${row.paper}` : row.where }),
          _jsx('small', {
            children: row.events.map(({ seq, words }, index) =>
              _jsxs(_Fragment, { children: [index > 0 && ' · ', words, ' ', _jsx('a', { href: `/entries/${seq}`, children: seq })] }),
            ),
          }),
          row.next &&
            _jsxs('a', {
              class: 'do',
              href: row.next[0],
              children: [row.next[1], _jsxs('span', { class: 'sr', children: [' (', row.seat, ')'] })],
            }),
        ],
      }),
    ),
  });
}
