import { Fragment as _Fragment, jsx as _jsx, jsxs as _jsxs } from 'hono/jsx/jsx-runtime';
export function EntryView({ line, details, job, doubted }) {
  return _jsxs(_Fragment, {
    children: [
      _jsxs('section', {
        class: 'head',
        children: [
          _jsxs('p', {
            class: 'soft',
            children: [
              'Entry ',
              line.seq,
              job && _jsxs(_Fragment, { children: [' · bag ', _jsx('a', { class: 'mini', href: `/jobs/${job.id}`, children: job.bag })] }),
            ],
          }),
          _jsx('h1', { children: line.said }),
          _jsxs('p', {
            class: 'soft',
            children: ['Written by ', _jsx('b', { children: line.by }), ', ', line.at, line.late && `; it happened ${line.late}`],
          }),
          line.corrects !== null &&
            _jsxs('p', {
              children: ['It corrects ', _jsxs('a', { href: `/entries/${line.corrects}`, children: ['entry ', line.corrects] }), '.'],
            }),
          doubted &&
            _jsx('p', {
              class: 'again',
              children: 'In doubt: the balance failed a check before or after this weighing. Weigh it again on another.',
            }),
          line.correctedBy.map((seq) =>
            _jsxs('p', {
              class: 'again',
              children: [
                'Corrected by ',
                _jsxs('a', { href: `/entries/${seq}`, children: ['entry ', seq] }),
                '; what stands below is what it says now.',
              ],
            }),
          ),
        ],
      }),
      _jsx('dl', {
        class: 'facts',
        children: details.map(({ name, label, words, correctable, sealed }) =>
          _jsxs('div', {
            children: [
              _jsxs('dt', { children: [label, sealed && _jsx('small', { children: ' sealed' })] }),
              _jsx('dd', { children: words }),
              correctable &&
                _jsx('dd', {
                  class: 'do',
                  children: _jsxs('a', {
                    href: `/entries/${line.seq}/correct/${name}`,
                    children: ['Correct', _jsxs('span', { class: 'sr', children: [' ', label] })],
                  }),
                }),
            ],
          }),
        ),
      }),
      _jsx('p', { class: 'soft', children: _jsxs('small', { children: ['Leaf hash ', _jsx('code', { children: line.hash })] }) }),
    ],
  });
}
