import { Fragment as _Fragment, jsx as _jsx, jsxs as _jsxs } from 'hono/jsx/jsx-runtime';
// A bag's code in its tag; the pattern of the spine tells the metal family.
export function Tag({ code, metal, href }) {
  const family = metal.split('-')[0] ?? 'other';
  const tag = _jsxs(_Fragment, {
    children: [_jsx('span', { class: `spine ${family}`, 'aria-hidden': 'true' }), _jsx('code', { children: code })],
  });
  return href ? _jsx('a', { class: 'tag', href: href, children: tag }) : _jsx('p', { class: 'tag', children: tag });
}
