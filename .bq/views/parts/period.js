import { jsx as _jsx, jsxs as _jsxs } from 'hono/jsx/jsx-runtime';
// A period to look at: two days and a button, in the address.
export function Period({ action, from, to }) {
  return _jsxs('form', {
    class: 'period',
    action: action,
    children: [
      _jsx('label', { class: 'l', for: 'from', children: 'From' }),
      _jsx('input', { class: 'text', type: 'date', id: 'from', name: 'from', value: from }),
      _jsx('label', { class: 'l', for: 'to', children: 'to' }),
      _jsx('input', { class: 'text', type: 'date', id: 'to', name: 'to', value: to }),
      _jsx('button', { children: 'Show' }),
    ],
  });
}
