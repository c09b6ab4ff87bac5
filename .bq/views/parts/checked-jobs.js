import { jsx as _jsx, jsxs as _jsxs } from 'hono/jsx/jsx-runtime';
export function CheckedJobs({ rows }) {
  return _jsxs('table', {
    children: [
      _jsx('thead', {
        children: _jsxs('tr', {
          children: [
            _jsx('th', { scope: 'col', children: 'Job' }),
            _jsx('th', { scope: 'col', children: 'Weighed last' }),
            _jsx('th', { scope: 'col', children: 'Loss' }),
            _jsx('th', { scope: 'col', children: 'Says' }),
          ],
        }),
      }),
      _jsx('tbody', {
        children: rows.map(({ job, bag, day, loss, says, stands = false }) =>
          _jsxs('tr', {
            children: [
              _jsx('td', { children: _jsx('a', { class: 'mini', href: `/jobs/${job}/reckoning`, children: bag }) }),
              _jsx('td', { children: day }),
              _jsx('td', { class: 'num', children: loss }),
              _jsxs('td', { class: stands ? 'off' : '', children: [stands && 'stands out: ', says] }),
            ],
          }),
        ),
      }),
    ],
  });
}
