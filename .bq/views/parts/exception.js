import { Fragment as _Fragment, jsx as _jsx, jsxs as _jsxs } from 'hono/jsx/jsx-runtime';
export function ExceptionOffer({ sentence, job, bag, offers }) {
  return _jsxs(_Fragment, {
    children: [
      _jsx('p', { class: 'sentence', children: sentence }),
      _jsxs('p', { class: 'soft', children: ['Bag', ' ', _jsx('a', { class: 'mini', href: `/jobs/${job}`, children: bag })] }),
      offers &&
        _jsxs('p', {
          class: 'again',
          children: [
            'Count again first. If it cannot be put right while the customer waits, tell them what does not agree and',
            ' ',
            _jsx('a', { href: `/jobs/${job}/hand-back-with-exception`, children: 'hand it back with an exception' }),
            ', which they sign.',
          ],
        }),
    ],
  });
}
