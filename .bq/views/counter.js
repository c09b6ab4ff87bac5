import { Fragment as _Fragment, jsx as _jsx, jsxs as _jsxs } from 'hono/jsx/jsx-runtime';
import { Promised } from './parts/jobs.js';
import { Tag } from './parts/tag.js';
export function Counter({ rows }) {
  const [ready, here] = [rows.filter(({ status }) => status === 'finished'), rows.filter(({ status }) => status !== 'finished')];
  return _jsxs(_Fragment, {
    children: [
      _jsx('section', { class: 'head', children: _jsx('h1', { children: 'Counter' }) }),
      _jsxs('div', {
        class: 'two doors',
        children: [
          _jsxs(Door, {
            action: '/ticket',
            name: 'q',
            label: 'Leaving a piece',
            placeholder: 'Phone digits or a name',
            button: 'Short ticket',
            children: [
              _jsx('a', { href: '/take-in', children: 'Full take-in' }),
              ' \u00B7 ',
              _jsx('a', { href: '/wait', children: 'Wait and take' }),
            ],
          }),
          _jsx(Door, { action: '/bag', name: 'code', label: 'Collecting', placeholder: 'Scan or type the bag', button: 'Open the bag' }),
        ],
      }),
      rows.length === 0 && _jsx('p', { class: 'soft', children: 'Nothing is in the house. Start with the customer\u2019s phone or name.' }),
      _jsx(Rows, { title: 'Ready to go home', rows: ready }),
      _jsx(Rows, { title: 'In the house', rows: here }),
    ],
  });
}
function Door({ action, name, label, placeholder, button, children }) {
  return _jsxs('form', {
    class: 'next',
    method: 'get',
    action: action,
    children: [
      _jsx('label', { class: 'l', for: `door-${name}`, children: label }),
      _jsx('input', { class: 'text', id: `door-${name}`, name: name, placeholder: placeholder, autocomplete: 'off' }),
      _jsxs('div', { class: 'act', children: [_jsx('button', { children: button }), _jsx('span', { children: children })] }),
    ],
  });
}
function Rows({ title, rows }) {
  if (rows.length === 0) return null;
  return _jsxs('section', {
    children: [
      _jsx('h2', { children: title }),
      _jsx('ul', {
        class: 'jobs',
        children: rows.map((row) =>
          _jsxs('li', {
            children: [
              _jsx(Tag, { code: row.bag, metal: row.metal, href: `/jobs/${row.id}` }),
              _jsxs('div', {
                children: [
                  _jsx('b', { children: row.what || 'nothing received yet' }),
                  _jsxs('small', {
                    children: [_jsx(Promised, { job: row }), [row.customer, row.where, row.status].filter(Boolean).join(' · ')],
                  }),
                ],
              }),
            ],
          }),
        ),
      }),
    ],
  });
}
