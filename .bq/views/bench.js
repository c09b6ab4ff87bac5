import { Fragment as _Fragment, jsx as _jsx, jsxs as _jsxs } from 'hono/jsx/jsx-runtime';
// The bench: the job in hand largest, then what comes next, what is late, and what waits in the safe.
import { JobList, Promised } from './parts/jobs.js';
import { Tag } from './parts/tag.js';
export function BenchView({ inHand, next, late, waiting }) {
  return _jsxs(_Fragment, {
    children: [
      _jsx('section', { class: 'head', children: _jsx('h1', { children: 'Bench' }) }),
      inHand
        ? _jsx(InHand, { job: inHand })
        : _jsx('p', { class: 'sentence', children: `Bench clear.${waiting.length > 0 ? waits(waiting.length) : ''}` }),
      _jsx(Group, { title: 'Next on my bench', jobs: next }),
      _jsx(Group, { title: 'Late, and not on my bench', jobs: late }),
      _jsx(Group, { title: 'Waiting in the safe', jobs: waiting }),
    ],
  });
}
const waits = (count) => (count === 1 ? ' One job waits in the safe.' : ` ${count} jobs wait in the safe.`);
function InHand({ job }) {
  return _jsxs('section', {
    class: 'next in-hand',
    'aria-labelledby': 'in-hand',
    children: [
      _jsx('h2', { id: 'in-hand', children: 'In my hand' }),
      _jsx(Tag, { code: job.bag, metal: job.metal }),
      _jsx('p', { children: _jsx('b', { children: job.what }) }),
      _jsxs('p', { class: 'soft', children: [_jsx(Promised, { job: job }), job.next && `next: ${job.next.toLowerCase()}`] }),
      _jsxs('a', { class: 'button', href: `/jobs/${job.id}`, children: ['Open ', job.bag] }),
    ],
  });
}
function Group({ title, jobs }) {
  if (jobs.length === 0) return null;
  return _jsxs('section', { class: 'block', children: [_jsx('h2', { children: title }), _jsx(JobList, { jobs: jobs })] });
}
