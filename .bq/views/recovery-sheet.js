import { jsx as _jsx, jsxs as _jsxs } from 'hono/jsx/jsx-runtime';
export function RecoverySheet({ shop, log, seed, vkey, fingerprint }) {
  return _jsxs('section', {
    class: 'head paper',
    children: [
      _jsx('h1', { children: 'Recovery sheet' }),
      _jsxs('p', {
        children: [
          'Print this and lock it away from this machine. Whoever has the seed can sign as ',
          shop,
          '; without it and the files nobody can go on signing this ledger.',
        ],
      }),
      _jsxs('dl', {
        class: 'facts',
        children: [
          _jsxs('div', { children: [_jsx('dt', { children: 'Shop' }), _jsx('dd', { children: shop })] }),
          _jsxs('div', { children: [_jsx('dt', { children: 'Ledger' }), _jsx('dd', { children: _jsx('code', { children: log }) })] }),
          _jsxs('div', {
            children: [
              _jsx('dt', { children: 'Signing seed' }),
              _jsx('dd', { children: _jsx('code', { children: seed.match(/.{1,8}/g)?.join(' ') }) }),
            ],
          }),
          _jsxs('div', { children: [_jsx('dt', { children: 'Public key' }), _jsx('dd', { children: _jsx('code', { children: vkey }) })] }),
          _jsxs('div', {
            children: [
              _jsx('dt', { children: 'Its fingerprint, SHA-256' }),
              _jsx('dd', { children: _jsx('code', { children: fingerprint.match(/.{1,8}/g)?.join(' ') }) }),
            ],
          }),
        ],
      }),
      _jsx('a', { class: 'button', href: '/', children: 'It is printed: to the counter' }),
    ],
  });
}
