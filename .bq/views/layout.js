import { Fragment as _Fragment, jsx as _jsx, jsxs as _jsxs } from 'hono/jsx/jsx-runtime';

/** Shown to the owner alone. */
const OWNERS = ['/owner', '/setup'];
const PLACES = [
  ['/', 'Counter'],
  ['/bench', 'Bench'],
  ['/safe', 'Safe'],
  ['/calculator', 'Calculator'],
  ['/trail', 'Trail'],
  ['/owner', 'For the owner'],
  ['/setup', 'Setup'],
];
export function Layout({ title, current, person, shop, drafts, fragment, children }) {
  const full = `${title} · Lemel`;
  const main = _jsx('main', { id: 'main', tabindex: -1, children: children });
  if (fragment) {
    return _jsxs(_Fragment, { children: [_jsx('title', { children: full }), main] });
  }
  return _jsxs('html', {
    lang: 'en-GB',
    children: [
      _jsxs('head', {
        children: [
          _jsx('meta', { charset: 'utf-8' }),
          _jsx('meta', { name: 'viewport', content: 'width=device-width,initial-scale=1' }),
          _jsx('meta', { name: 'htmx-config', content: '{"extensions":"trusted"}' }),
          _jsx('title', { children: full }),
          _jsx('link', { rel: 'icon', href: '/assets/beam.svg', type: 'image/svg+xml' }),
          _jsx('link', { rel: 'stylesheet', href: '/assets/lemel.css' }),
          _jsx('link', { rel: 'stylesheet', href: '/assets/screens.css' }),
          _jsx('link', { rel: 'stylesheet', href: '/assets/charts.css' }),
          _jsx('link', { rel: 'stylesheet', href: '/assets/letter.css' }),
          _jsx('link', { rel: 'stylesheet', href: '/assets/bench.css' }),
          _jsx('script', { src: '/assets/htmx.js', defer: true }),
          _jsx('script', { src: '/assets/app.js', defer: true }),
        ],
      }),
      _jsxs('body', {
        children: [
          _jsx('a', { class: 'skip', href: '#main', children: 'To the content' }),
          person && _jsx(TopBar, { current: current, person: person, shop: shop, drafts: drafts }),
          _jsx('div', { id: 'alert', role: 'alert', hidden: true }),
          main,
        ],
      }),
    ],
  });
}
function TopBar({ current, person, shop, drafts }) {
  const places = PLACES.filter(([path]) => !OWNERS.includes(path) || person.role === 'owner');
  return _jsxs('header', {
    class: 'top',
    children: [
      _jsxs('a', {
        class: 'mark',
        href: '/',
        title: shop ?? 'Lemel',
        children: [
          _jsx('svg', {
            viewBox: '0 0 40 20',
            width: '40',
            height: '20',
            'aria-hidden': 'true',
            children: _jsx('path', {
              d: 'M20 3v13M13 17h14M5 6h30M5 6l-3.5 6h7zM35 6l-3.5 6h7z',
              fill: 'none',
              stroke: 'currentColor',
              'stroke-width': '1.5',
              'stroke-linejoin': 'round',
            }),
          }),
          'Lemel',
        ],
      }),
      _jsx('nav', {
        'aria-label': 'Places',
        children: places.map(([path, name]) =>
          _jsx('a', { href: path, ...(path === current ? { 'aria-current': 'page' } : {}), children: name }),
        ),
      }),
      _jsxs('form', {
        class: 'find',
        role: 'search',
        action: '/find',
        children: [
          _jsx('label', { for: 'q', class: 'sr', children: 'Find' }),
          _jsx('input', { id: 'q', name: 'q', placeholder: 'Find a bag, a stone, a name', autocomplete: 'off' }),
        ],
      }),
      _jsxs('form', {
        class: 'who',
        method: 'post',
        action: '/lock',
        children: [
          _jsx('b', { children: person.name }),
          ' ',
          drafts > 0 && _jsxs('a', { href: '/drafts', children: [drafts, ' not written yet'] }),
          ' ',
          _jsx('button', { class: 'plain', children: 'Lock' }),
        ],
      }),
    ],
  });
}
