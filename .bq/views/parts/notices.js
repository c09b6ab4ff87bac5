import { Fragment as _Fragment, jsx as _jsx, jsxs as _jsxs } from 'hono/jsx/jsx-runtime';
// What stands beside a form: what somebody else wrote meanwhile, and the usual cautions.
export function Since({ since }) {
  return _jsxs('div', {
    class: 'again',
    role: 'alert',
    children: [
      _jsx('b', { children: 'Somebody wrote on this job while you typed.' }),
      ' What you typed is kept below. Look at',
      ' ',
      since.map((seq) => _jsxs(_Fragment, { children: [_jsxs('a', { href: `/entries/${seq}`, children: ['entry ', seq] }), ' '] })),
      'and send it again if it still holds.',
    ],
  });
}
export function Cautions({ cautions }) {
  if (cautions.length === 0) return null;
  return _jsxs('aside', {
    class: 'cautions',
    'aria-label': 'Usual cautions',
    children: [
      _jsx('b', { children: 'Usual cautions' }),
      _jsx('ul', { children: cautions.map((caution) => _jsx('li', { children: caution })) }),
      _jsx('small', { children: 'Follow the safety data sheet, your local code and a licensed practitioner.' }),
    ],
  });
}
