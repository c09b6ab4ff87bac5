import { Fragment as _Fragment, jsx as _jsx, jsxs as _jsxs } from 'hono/jsx/jsx-runtime';
// The jobs of a period whose weights were checked: how many would show by chance, how many did, and which stand up together.
import { CheckedJobs } from './parts/checked-jobs.js';
import { Period } from './parts/period.js';
export function WeightsView({ from, to, sentence, standing, rows }) {
  return _jsxs(_Fragment, {
    children: [
      _jsxs('section', {
        class: 'head',
        children: [
          _jsx('h1', { children: 'Weights of a period' }),
          _jsx(Period, { action: '/owner/weights', from: from, to: to }),
          _jsx('p', { class: 'sentence', children: sentence }),
          rows.length > 0 &&
            _jsx('p', {
              children:
                standing === 0
                  ? 'None of them stands out once it is counted how many were looked at.'
                  : `${standing} of them ${standing === 1 ? 'stands' : 'stand'} out even so, marked below: start there.`,
            }),
        ],
      }),
      rows.length === 0
        ? _jsx('p', { class: 'soft', children: 'No job was weighed in and out in these days.' })
        : _jsx('section', { class: 'block', children: _jsx(CheckedJobs, { rows: rows }) }),
    ],
  });
}
