import { Fragment as _Fragment, jsx as _jsx, jsxs as _jsxs } from 'hono/jsx/jsx-runtime';
import { Ledger } from './parts/ledger.js';
import { Watch } from './parts/news.js';
import { Cautions } from './parts/notices.js';
import { Reckoning } from './parts/reckoning.js';
import { Tag } from './parts/tag.js';
export function JobView({ facts, lines, reckoned, next, links, photos, mayWrite, cautions, written }) {
  const where = [
    facts.customer,
    facts.holder && `with ${facts.holder}`,
    facts.place,
    facts.promise && `promised ${facts.promise}`,
    facts.status,
    facts.path,
  ];
  return _jsxs(_Fragment, {
    children: [
      written &&
        _jsxs('p', {
          class: 'written',
          role: 'status',
          children: [
            'Entry ',
            written.seq,
            ' written: ',
            written.said,
            '. ',
            _jsx('a', { href: `/entries/${written.seq}`, children: 'Look at it or correct it' }),
          ],
        }),
      _jsxs('section', {
        class: 'head',
        children: [
          _jsx(Tag, { code: facts.bag, metal: facts.metal }),
          _jsx('h1', { children: facts.title }),
          _jsx('p', { class: 'soft', children: where.filter(Boolean).join(' · ') }),
          _jsx(Ways, { job: facts.id, mayWrite: mayWrite }),
          _jsx(Watch, { job: facts.id, after: lines.length }),
        ],
      }),
      _jsx(Reckoning, { job: facts.id, reckoned: reckoned }),
      _jsx(Cautions, { cautions: cautions }),
      _jsxs('div', {
        class: 'two',
        children: [
          _jsxs('div', {
            class: 'beside',
            children: [
              _jsxs('section', {
                class: 'next',
                'aria-labelledby': 'n',
                children: [
                  _jsx('h2', { id: 'n', children: 'Next' }),
                  next
                    ? _jsx('a', { class: 'button', href: next[0], children: next[1] })
                    : _jsx('p', { class: 'soft', children: 'Nothing is due.' }),
                  links.length > 0 &&
                    _jsxs('details', {
                      children: [
                        _jsx('summary', { children: 'Write something else' }),
                        _jsx('ul', {
                          class: 'links',
                          children: links.map(([href, words]) => _jsx('li', { children: _jsx('a', { href: href, children: words }) })),
                        }),
                      ],
                    }),
                ],
              }),
              _jsx(Photographs, { job: facts.id, photos: photos, mayWrite: mayWrite }),
            ],
          }),
          _jsxs('section', {
            'aria-labelledby': 'l',
            children: [
              _jsx('h2', { id: 'l', children: 'What has happened' }),
              _jsx(Ledger, { lines: lines }),
              lines.length === 0 && _jsx('p', { class: 'soft', children: 'Nothing yet after take-in.' }),
            ],
          }),
        ],
      }),
    ],
  });
}
const WAYS = [
  ['/stones', 'Stones'],
  ['/reckoning', 'The reckoning'],
  ['?face=customer', 'Turn the screen'],
  ['/letter', 'Letter'],
];
function Ways({ job, mayWrite }) {
  return _jsx('p', {
    class: 'ways',
    children: WAYS.filter(([path]) => mayWrite || path !== '/letter').map(([path, words]) =>
      _jsx('a', { href: `/jobs/${job}${path}`, children: words }),
    ),
  });
}
function Photographs({ job, photos, mayWrite }) {
  return _jsxs('section', {
    'aria-labelledby': 'p',
    children: [
      _jsx('h2', { id: 'p', children: 'Photographs' }),
      _jsx('ul', {
        class: 'photos',
        children: photos.map(({ seq, hash, shows }) =>
          _jsxs('li', {
            children: [
              _jsx('a', { href: `/photos/${hash}`, children: _jsx('img', { src: `/photos/${hash}`, alt: shows, loading: 'lazy' }) }),
              _jsxs('small', { children: [shows, ' \u00B7 ', _jsx('a', { href: `/entries/${seq}`, children: seq })] }),
            ],
          }),
        ),
      }),
      photos.length === 0 && _jsx('p', { class: 'soft', children: 'No photograph yet.' }),
      mayWrite && _jsx('a', { href: `/jobs/${job}/write/photo_added`, children: 'Add a photograph' }),
    ],
  });
}
