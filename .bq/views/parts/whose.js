import { jsx as _jsx, jsxs as _jsxs } from 'hono/jsx/jsx-runtime';
export function Whose({ action, q, matches }) {
  return _jsxs('form', {
    class: 'whose',
    method: 'get',
    action: action,
    role: 'search',
    'aria-label': 'Customers',
    children: [
      _jsx('label', { class: 'l', for: 'whose', children: 'Whose is it?' }),
      _jsxs('span', {
        class: 'with-unit',
        children: [
          _jsx('input', { class: 'text', id: 'whose', name: 'q', value: q, placeholder: 'Phone digits or a name', autocomplete: 'off' }),
          _jsx('button', { class: 'plain', children: 'Look' }),
        ],
      }),
      matches !== null && _jsx('small', { children: found(matches) }),
    ],
  });
}
function found(matches) {
  if (matches === 0) return 'Nobody known by that. Write the name below.';
  return matches === 1 ? 'One found. Somebody else’s? Look again, or write a new name.' : `${matches} found. Choose below.`;
}
