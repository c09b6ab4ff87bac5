import { jsx as _jsx, jsxs as _jsxs } from 'hono/jsx/jsx-runtime';
// A list of jobs by their bags, as the bench, the safe and the owner see it.
import { Tag } from './tag.js';
export function JobList({ jobs }) {
  return _jsx('ul', {
    class: 'jobs',
    children: jobs.map((job) =>
      _jsxs('li', {
        children: [
          _jsx(Tag, { code: job.bag, metal: job.metal, href: `/jobs/${job.id}` }),
          _jsxs('div', {
            children: [
              _jsx('b', { children: job.what }),
              _jsxs('small', {
                children: [
                  _jsx(Promised, { job: job }),
                  [job.where, job.next && `next: ${job.next.toLowerCase()}`].filter(Boolean).join(' · '),
                ],
              }),
            ],
          }),
        ],
      }),
    ),
  });
}
export function Promised({ job }) {
  if (job.promised === '') return null;
  const words = `promised ${job.promised} · `;
  return job.late ? _jsxs('b', { class: 'late', children: ['late: ', words] }) : _jsx('span', { children: words });
}
