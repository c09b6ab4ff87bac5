import { jsx as _jsx, jsxs as _jsxs } from 'hono/jsx/jsx-runtime';

// "Somebody wrote on this job": asked for while the page is open; without scripts a plain link does the same.
const EVERY = '15s';
/** Watches a job of which `after` entries are on the page. */
export function Watch({ job, after }) {
  return _jsx('div', {
    role: 'status',
    'hx-get': `/jobs/${job}/news?after=${after}`,
    'hx-trigger': `every ${EVERY}`,
    'hx-swap': 'innerHTML',
    children: _jsx('noscript', { children: _jsx('a', { href: `/jobs/${job}`, children: 'Look for new entries' }) }),
  });
}
export function News({ job, seqs }) {
  const last = seqs.at(-1);
  if (last === undefined) return null;
  return _jsxs('p', {
    class: 'again',
    children: [
      'Somebody wrote on this job: ',
      seqs.length === 1 ? `entry ${last}` : `${seqs.length} entries, up to ${last}`,
      '.',
      ' ',
      _jsx('a', { href: `/jobs/${job}`, children: 'Show the job as it is now' }),
    ],
  });
}
