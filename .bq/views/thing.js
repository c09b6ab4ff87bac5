import { Fragment as _Fragment, jsx as _jsx, jsxs as _jsxs } from 'hono/jsx/jsx-runtime';
// A lot, stock, skin, balance or place, with the entries that tell of it.
import { Ledger } from './parts/ledger.js';

const KINDS = {
  lot: 'Scrap lot',
  stock: 'Stock',
  skin: 'Bench skin',
  balance: 'Balance',
  place: 'Place',
};
export function ThingView({ name, kind, weight, lines, older }) {
  return _jsxs(_Fragment, {
    children: [
      _jsxs('section', {
        class: 'head',
        children: [
          _jsx('p', { class: 'soft', children: KINDS[kind] ?? kind }),
          _jsx('h1', { children: name }),
          weight && _jsxs('p', { children: ['In it by its entries: ', _jsx('b', { children: weight })] }),
        ],
      }),
      _jsx(Ledger, { lines: lines }),
      older !== null && _jsx('a', { href: older, children: 'Earlier entries' }),
    ],
  });
}
