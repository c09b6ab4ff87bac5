import { jsx as _jsx, jsxs as _jsxs } from 'hono/jsx/jsx-runtime';
export function Stones({ stones }) {
  if (stones.length === 0) return null;
  return _jsxs('section', {
    children: [
      _jsx('h2', { children: 'The stones' }),
      _jsx('ul', {
        class: 'rows',
        children: stones.map(({ seat, what, weights, where }) =>
          _jsxs('li', {
            children: [
              _jsxs('b', { children: [seat, ': ', what] }),
              _jsx('span', { children: weights }),
              _jsx('small', { children: where }),
            ],
          }),
        ),
      }),
    ],
  });
}
export function Crossings({ letter: { removed, added, dust } }) {
  return _jsxs('section', {
    children: [
      _jsx('h2', { children: 'Removed and added' }),
      _jsxs('ul', {
        class: 'rows',
        children: [
          removed.map((one) => _jsx(Row, { row: one, before: 'Worn metal removed' })),
          added.map((one) => _jsx(Row, { row: one, before: 'Added' })),
          removed.length + added.length === 0 && _jsx('li', { children: 'No metal was removed or added.' }),
          dust !== null &&
            _jsxs('li', { children: [_jsx('b', { children: 'Dust and filings' }), _jsx('span', {}), _jsx('small', { children: dust })] }),
        ],
      }),
    ],
  });
}
function Row({ row: { what, weight, where }, before }) {
  return _jsxs('li', {
    children: [_jsxs('b', { children: [before, ': ', what] }), _jsx('span', { children: weight }), _jsx('small', { children: where })],
  });
}
export function Timeline({ moments }) {
  return _jsxs('section', {
    children: [
      _jsx('h2', { children: 'What was done, and when' }),
      _jsx('ol', {
        class: 'rows',
        children: moments.map(({ seq, what, at, by, weight, correctedBy, corrects }) =>
          _jsxs('li', {
            children: [
              _jsx('b', { children: what }),
              _jsx('span', { children: weight }),
              _jsxs('small', {
                children: [
                  at,
                  ' \u00B7 ',
                  by,
                  ' \u00B7 entry ',
                  seq,
                  correctedBy.length > 0 && ` · corrected by entry ${correctedBy.join(', ')}`,
                  corrects !== null && ` · corrects entry ${corrects}`,
                ],
              }),
            ],
          }),
        ),
      }),
    ],
  });
}
export function ThenAndNow({ photos, src }) {
  const first = photos.find(({ shows }) => shows === 'on the pan') ?? photos[0];
  const last = photos.at(-1);
  const both = [first, last].filter((one, n) => one !== undefined && (n === 0 || one !== first));
  if (both.length === 0) return null;
  return _jsx('section', {
    class: 'then-now',
    'aria-label': 'Photographs',
    children: both.map(
      (one) =>
        one &&
        _jsxs('figure', {
          children: [
            src(one.hash) === ''
              ? _jsx('p', { class: 'soft', children: 'This photograph has been deleted.' })
              : _jsx('img', { src: src(one.hash), alt: `${one.shows}, ${one.at}` }),
            _jsxs('figcaption', { children: [one.at, ', ', one.shows] }),
          ],
        }),
    ),
  });
}
export function Corrections({ moments }) {
  const corrected = moments.filter(({ correctedBy }) => correctedBy.length > 0).length;
  return _jsx('p', {
    class: 'soft',
    children:
      corrected === 0
        ? 'Nothing in this job was corrected afterwards.'
        : `${corrected === 1 ? 'One entry was' : `${corrected} entries were`} corrected afterwards; what is shown is what stands now, and the corrections are in the list above.`,
  });
}
