import { Fragment as _Fragment, jsx as _jsx, jsxs as _jsxs } from 'hono/jsx/jsx-runtime';
// The trail: every entry, newest first, and the check of the log.
import { Ledger } from './parts/ledger.js';
export function TrailView({ lines, older, checked, only, people, types, canExport }) {
  return _jsxs(_Fragment, {
    children: [
      _jsxs('section', {
        class: 'head',
        children: [
          _jsx('h1', { children: 'Trail' }),
          _jsx('p', {
            class: 'soft',
            children: 'Every entry as it was written. Nothing here is edited or deleted; a correction is a further entry.',
          }),
          _jsx('form', { method: 'post', action: '/trail/check', children: _jsx('button', { children: 'Check the log' }) }),
          canExport && _jsx('a', { href: '/export.jsonl', children: 'Download every entry (JSON Lines)' }),
        ],
      }),
      checked &&
        _jsxs('div', {
          class: checked.whole ? 'written' : 'summary',
          role: 'status',
          children: [
            _jsx('h2', { children: checked.whole ? 'The log is whole' : 'The log is not whole' }),
            _jsx('p', { children: checked.say }),
            checked.root && _jsx('p', { children: _jsxs('small', { children: ['Root ', _jsx('code', { children: checked.root })] }) }),
          ],
        }),
      _jsxs('form', {
        class: 'only',
        method: 'get',
        action: '/trail',
        children: [
          _jsx(Only, { name: 'by', label: 'Written by', all: 'anybody', options: people, chosen: only.by }),
          _jsx(Only, { name: 'type', label: 'Kind of entry', all: 'any', options: types, chosen: only.type }),
          _jsx('button', { children: 'Show these' }),
        ],
      }),
      lines.length === 0 ? _jsx('p', { class: 'soft', children: 'No entry is like that.' }) : _jsx(Ledger, { lines: lines }),
      older !== null && _jsx('a', { href: older, children: 'Earlier entries' }),
    ],
  });
}
function Only({ name, label, all, options, chosen }) {
  return _jsxs('p', {
    children: [
      _jsx('label', { class: 'l', for: `only-${name}`, children: label }),
      _jsxs('select', {
        class: 'text',
        id: `only-${name}`,
        name: name,
        children: [
          _jsx('option', { value: '', children: all }),
          options.map(([value, words]) => _jsx('option', { value: value, selected: value === chosen, children: words })),
        ],
      }),
    ],
  });
}
