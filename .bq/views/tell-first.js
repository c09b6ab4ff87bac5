import { jsx as _jsx, jsxs as _jsxs } from 'hono/jsx/jsx-runtime';
export function TellFirst({ job, bag, disagreements, caution }) {
  return _jsxs('section', {
    class: 'head',
    children: [
      _jsx('h1', { children: 'Tell your insurer first' }),
      _jsx('p', { children: 'This letter would say that something does not agree:' }),
      _jsx('ul', { class: 'reasons', children: disagreements.map((one) => _jsx('li', { children: one })) }),
      _jsx('p', { class: 'again', children: caution }),
      _jsxs('p', {
        class: 'act',
        children: [
          _jsx('a', { class: 'button', href: `/jobs/${job}/write/difference_explained`, children: 'Explain the difference' }),
          _jsx('a', { href: `/jobs/${job}/letter?told=yes`, children: 'Our insurer knows: show the letter' }),
          _jsxs('a', { href: `/jobs/${job}`, children: ['Back to ', bag] }),
        ],
      }),
    ],
  });
}
