import { Fragment as _Fragment, jsx as _jsx, jsxs as _jsxs } from 'hono/jsx/jsx-runtime';
// What needs a decision today, heap by heap.
import { Tag } from './parts/tag.js';
export function OwnerView({ readOnly, heaps }) {
  return _jsxs(_Fragment, {
    children: [
      _jsxs('section', {
        class: 'head',
        children: [
          _jsx('h1', { children: 'For the owner' }),
          _jsxs('p', {
            class: 'doors',
            children: [
              _jsx('a', { href: '/loss', children: 'Loss' }),
              _jsx('a', { href: '/owner/weights', children: 'Weights of a period' }),
              _jsx('a', { href: '/flow', children: 'Metal through the shop' }),
            ],
          }),
          heaps.length === 0 && readOnly === null && _jsx('p', { class: 'sentence', children: 'Nothing to decide today.' }),
        ],
      }),
      readOnly !== null &&
        _jsxs('section', {
          class: 'summary',
          children: [
            _jsx('h2', { children: 'The ledger is read only' }),
            _jsx('p', { children: readOnly }),
            _jsx('a', { href: '/trail', children: 'Check the log' }),
          ],
        }),
      heaps.map(({ title, rows }) =>
        _jsxs('section', {
          class: 'block',
          children: [
            _jsxs('h2', { children: [title, ' ', _jsx('small', { children: rows.length })] }),
            _jsx('ul', {
              class: 'jobs',
              children: rows.map(({ href, bag, metal, what, why }) =>
                _jsxs('li', {
                  children: [
                    _jsx(Tag, { code: bag, metal: metal, href: href }),
                    _jsxs('div', { children: [_jsx('b', { children: what }), _jsx('small', { children: why })] }),
                  ],
                }),
              ),
            }),
          ],
        }),
      ),
    ],
  });
}
