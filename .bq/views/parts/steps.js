import { Fragment as _Fragment, jsx as _jsx, jsxs as _jsxs } from 'hono/jsx/jsx-runtime';
/** Links to entries, one after another. */
export function Entries({ seqs }) {
  return _jsx(_Fragment, {
    children: seqs.map((seq, index) =>
      _jsxs(_Fragment, { children: [index > 0 && ', ', _jsxs('a', { href: `/entries/${seq}`, children: ['entry ', seq] })] }),
    ),
  });
}
/** A table of the steps, and the weighings in which nothing else would show a mistake. */
export function Steps({ why: { steps, unchecked } }) {
  return _jsxs('section', {
    class: 'block',
    'aria-labelledby': 's',
    children: [
      _jsx('h2', { id: 's', children: 'Step by step' }),
      steps.length < 2 &&
        _jsx('p', {
          class: 'soft',
          children:
            steps.length === 0
              ? 'The piece has not been weighed since it came in.'
              : 'The piece was not weighed between the steps, so nothing shows at which of them a weight went. A weighing after each step would.',
        }),
      steps.length > 0 &&
        _jsxs('table', {
          children: [
            _jsx('thead', {
              children: _jsxs('tr', {
                children: [
                  _jsx('th', { scope: 'col', children: 'Step' }),
                  _jsx('th', { scope: 'col', children: 'In against out, usual dust allowed for' }),
                  _jsx('th', { scope: 'col', children: 'Made of' }),
                ],
              }),
            }),
            _jsx('tbody', {
              children: steps.map(({ words, gap, seqs }) =>
                _jsxs('tr', {
                  children: [
                    _jsx('th', { scope: 'row', children: words }),
                    _jsx('td', {
                      class: gap?.isOff ? 'off' : '',
                      children: gap ? gap.words : 'cannot be known: not everything was weighed',
                    }),
                    _jsx('td', { children: _jsx(Entries, { seqs: seqs }) }),
                  ],
                }),
              ),
            }),
          ],
        }),
      unchecked.length > 0 &&
        _jsxs('p', { class: 'soft', children: ['Nothing else would show a mistake in: ', unchecked.join('; '), '.'] }),
    ],
  });
}
