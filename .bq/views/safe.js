import { Fragment as _Fragment, jsx as _jsx, jsxs as _jsxs } from 'hono/jsx/jsx-runtime';
// The safe, place by place, and the count of one of its trays.
import { JobList } from './parts/jobs.js';
import { Tag } from './parts/tag.js';
export function SafeView({ at, shelves, out }) {
  return _jsxs(_Fragment, {
    children: [
      _jsxs('section', {
        class: 'head',
        children: [_jsx('h1', { children: 'Safe' }), _jsxs('p', { class: 'soft', children: ['As of ', at, ', by what was written.'] })],
      }),
      shelves.map((shelf) =>
        _jsxs('section', {
          class: 'block',
          children: [
            _jsxs('h2', {
              children: [shelf.name, ' ', _jsx('small', { children: shelf.jobs.length === 1 ? '1 bag' : `${shelf.jobs.length} bags` })],
            }),
            shelf.jobs.length === 0
              ? _jsxs('p', { class: 'soft', children: ['Empty as of ', at, '. Put a bag in it with \u201CMove\u201D on its job.'] })
              : _jsxs(_Fragment, {
                  children: [
                    _jsx(JobList, { jobs: shelf.jobs }),
                    _jsxs('a', { class: 'button', href: `/safe/count/${shelf.id}`, children: ['Count ', shelf.name] }),
                  ],
                }),
          ],
        }),
      ),
      shelves.length === 0 &&
        _jsxs('p', { children: ['No safe is named yet. ', _jsx('a', { href: '/write/place_named', children: 'Name a place' })] }),
      _jsxs('section', {
        class: 'block',
        children: [
          _jsx('h2', { children: 'Out of the safe, and with whom' }),
          out.length === 0 ? _jsx('p', { class: 'soft', children: 'Nothing is out.' }) : _jsx(JobList, { jobs: out }),
        ],
      }),
    ],
  });
}
export function CountView({ shelf, scanned, problem, found, missing, extra }) {
  return _jsxs(_Fragment, {
    children: [
      _jsxs('section', {
        class: 'head',
        children: [
          _jsxs('h1', { children: ['Count ', shelf.name] }),
          _jsxs('p', {
            class: 'sentence',
            role: 'status',
            children: [
              found.length,
              ' of ',
              shelf.jobs.length,
              ' found',
              extra.length > 0 && `, ${extra.length} that should be elsewhere`,
              '.',
            ],
          }),
        ],
      }),
      _jsxs('form', {
        class: 'scan',
        method: 'get',
        action: `/safe/count/${shelf.id}`,
        children: [
          scanned.map((code) => _jsx('input', { type: 'hidden', name: 'found', value: code })),
          _jsx('label', { class: 'l', for: 'f-code', children: 'Scan or type the next bag' }),
          problem && _jsx('p', { class: 'error', id: 'f-code-error', children: problem }),
          _jsxs('div', {
            class: 'act',
            children: [
              _jsx('input', {
                class: 'text',
                id: 'f-code',
                name: 'code',
                autocomplete: 'off',
                autocapitalize: 'characters',
                autofocus: true,
                ...(problem ? { 'aria-invalid': 'true', 'aria-describedby': 'f-code-error' } : {}),
              }),
              _jsx('button', { children: 'Count it' }),
            ],
          }),
        ],
      }),
      _jsx(Extra, { extra: extra, place: shelf }),
      _jsxs('section', {
        class: 'block',
        children: [
          _jsx('h2', { children: missing.length === 0 ? 'None missing' : `Not found yet: ${missing.length}` }),
          missing.length > 0 && _jsx(JobList, { jobs: missing }),
          missing.length > 0 &&
            _jsx('p', { class: 'soft', children: 'What stays missing: write a note on its job, and who has it once it is found.' }),
        ],
      }),
      found.length > 0 &&
        _jsxs('section', { class: 'block', children: [_jsx('h2', { children: 'Found' }), _jsx(JobList, { jobs: found })] }),
      _jsx('a', { href: '/safe', children: 'Back to the safe' }),
    ],
  });
}
function Extra({ extra, place }) {
  if (extra.length === 0) return null;
  return _jsxs('section', {
    class: 'block',
    children: [
      _jsxs('h2', { children: ['In ', place.name, ', but not by what was written'] }),
      _jsx('ul', {
        class: 'jobs',
        children: extra.map(({ code, job }) =>
          _jsxs('li', {
            children: [
              _jsx(Tag, { code: code, metal: job?.metal ?? 'other', ...(job ? { href: `/jobs/${job.id}` } : {}) }),
              _jsxs('div', {
                children: [
                  _jsx('b', { children: job ? job.what : 'No open job has this bag' }),
                  _jsx('small', { children: job?.where }),
                  job &&
                    _jsxs('a', {
                      href: `/jobs/${job.id}/write/moved?of=${job.id}&to=${place.id}`,
                      children: ['Write that it is here', _jsxs('span', { class: 'sr', children: [' (', code, ')'] })],
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
