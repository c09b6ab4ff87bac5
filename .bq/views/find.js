import { Fragment as _Fragment, jsx as _jsx, jsxs as _jsxs } from 'hono/jsx/jsx-runtime';

const KINDS = { lot: 'scrap lot', skin: 'bench skin' };
export function FindView({ words, hits }) {
  return _jsxs(_Fragment, {
    children: [
      _jsxs('section', {
        class: 'head',
        children: [
          _jsx('h1', { children: words === '' ? 'Find' : `Found for “${words}”` }),
          words === '' && _jsx('p', { class: 'soft', children: 'Type or scan a bag, a name, the digits of a telephone, a stone, a mark.' }),
        ],
      }),
      hits.length === 0 &&
        words !== '' &&
        _jsxs('p', {
          class: 'soft',
          children: ['Nothing for \u201C', words, '\u201D. Bag codes never use 0, 1, I, L, O, U or Z; words want three letters or more.'],
        }),
      hits.length > 0 &&
        _jsx('ul', {
          class: 'links',
          children: hits.map(({ href, words: what, kind, bag }) =>
            _jsxs('li', {
              children: [
                _jsx('a', { href: href, children: what }),
                ' ',
                _jsx('small', { children: [KINDS[kind] ?? kind, bag].filter(Boolean).join(' · ') }),
              ],
            }),
          ),
        }),
    ],
  });
}
