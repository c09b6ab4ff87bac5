import { jsx as _jsx, jsxs as _jsxs } from 'hono/jsx/jsx-runtime';
export function Trouble({ title, say, ways }) {
  return _jsxs('section', {
    class: 'head',
    children: [
      _jsx('h1', { children: title }),
      _jsx('p', { children: say }),
      _jsx('p', { class: 'ways', children: ways.map(([href, words]) => _jsx('a', { href: href, children: words })) }),
    ],
  });
}
