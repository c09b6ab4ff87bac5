import { Fragment as _Fragment, jsx as _jsx, jsxs as _jsxs } from 'hono/jsx/jsx-runtime';
export function DraftsView({ drafts }) {
  return _jsxs(_Fragment, {
    children: [
      _jsxs('section', {
        class: 'head',
        children: [
          _jsx('h1', { children: 'Not written yet' }),
          _jsx('p', {
            class: 'soft',
            children:
              drafts.length === 0
                ? 'Nothing is waiting: every form you began was written or thrown away.'
                : 'You were writing these. They are not in the ledger.',
          }),
        ],
      }),
      _jsx('ul', {
        class: 'unwritten',
        children: drafts.map(({ key, href, title, bag, savedAt }) =>
          _jsxs('li', {
            children: [
              _jsxs('span', {
                children: [
                  _jsx('b', { children: title }),
                  bag !== '' && _jsxs(_Fragment, { children: [' ', _jsx('span', { class: 'mini', children: bag })] }),
                  _jsx('small', { children: savedAt }),
                ],
              }),
              _jsxs('a', { class: 'button', href: href, children: ['Go on', _jsxs('span', { class: 'sr', children: [' with ', title] })] }),
              _jsxs('form', {
                method: 'post',
                action: '/drafts/drop',
                children: [
                  _jsx('input', { type: 'hidden', name: 'key', value: key }),
                  _jsxs('button', { class: 'plain', children: ['Throw away', _jsxs('span', { class: 'sr', children: [' ', title] })] }),
                ],
              }),
            ],
          }),
        ),
      }),
    ],
  });
}
