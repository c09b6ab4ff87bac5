import { Fragment as _Fragment, jsx as _jsx, jsxs as _jsxs } from 'hono/jsx/jsx-runtime';
// Setup: its lists, each with how to add to it, and the form for a PIN.
import { ErrorSummary, FieldError } from './parts/errors.js';
export function SetupView({ sections, people, problems }) {
  return _jsxs(_Fragment, {
    children: [
      _jsx(ErrorSummary, { problems: problems }),
      _jsxs('section', {
        class: 'head',
        children: [
          _jsx('h1', { children: 'Setup' }),
          _jsxs('p', {
            class: 'ways',
            children: [
              _jsx('a', { href: '/devices', children: 'Screens' }),
              _jsx('a', { href: '/setup/recovery-sheet', children: 'Recovery sheet' }),
              _jsx('a', { href: '/trail', children: 'Check the log' }),
            ],
          }),
        ],
      }),
      _jsx('div', { class: 'setup', children: sections.map((section) => _jsx(Section, { ...section })) }),
      _jsxs('section', {
        class: 'block',
        children: [
          _jsx('h2', { children: 'Give somebody a PIN' }),
          _jsxs('form', {
            class: 'sheet narrow',
            method: 'post',
            action: '/setup/pin',
            children: [
              _jsxs('fieldset', {
                class: 'field wide',
                id: 'f-person',
                children: [
                  _jsx('legend', { children: 'Whose' }),
                  _jsx(FieldError, { name: 'person', problems: problems }),
                  _jsx('div', {
                    class: 'chips',
                    children: people.map(([id, name]) =>
                      _jsxs('label', { children: [_jsx('input', { type: 'radio', name: 'person', value: id }), ' ', name] }),
                    ),
                  }),
                ],
              }),
              _jsxs('div', {
                class: 'field wide',
                children: [
                  _jsx('label', { class: 'l', for: 'f-pin', children: 'New PIN' }),
                  _jsx(FieldError, { name: 'pin', problems: problems }),
                  _jsx('input', { class: 'text', id: 'f-pin', name: 'pin', type: 'password', inputmode: 'numeric', autocomplete: 'off' }),
                ],
              }),
              _jsx('div', { class: 'act wide', children: _jsx('button', { children: 'Set the PIN' }) }),
            ],
          }),
        ],
      }),
    ],
  });
}
function Section({ title, rows, none, add }) {
  return _jsxs('section', {
    class: 'block',
    children: [
      _jsx('h2', { children: title }),
      rows.length === 0 && _jsx('p', { class: 'soft', children: none }),
      _jsx('ul', {
        class: 'listed-rows',
        children: rows.map(({ words, href, more, next }) =>
          _jsxs('li', {
            children: [
              _jsxs('span', {
                children: [href ? _jsx('a', { href: href, children: words }) : words, ' ', _jsx('small', { children: more })],
              }),
              next && _jsxs('a', { href: next[0], children: [next[1], _jsxs('span', { class: 'sr', children: [' (', words, ')'] })] }),
            ],
          }),
        ),
      }),
      _jsx('p', { class: 'ways', children: add.map(([href, words]) => _jsx('a', { href: href, children: words })) }),
    ],
  });
}
