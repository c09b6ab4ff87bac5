import { Fragment as _Fragment, jsx as _jsx, jsxs as _jsxs } from 'hono/jsx/jsx-runtime';
// The read-back: what was typed, read aloud before it is written, with everything kept for one more change.
import { Secret, upgraded } from './entry-form.js';
import { ErrorSummary } from './parts/errors.js';
export function ReadBack({ sentences, action, button, also, typed, asks, problems }) {
  return _jsxs(_Fragment, {
    children: [
      _jsx(ErrorSummary, { problems: problems }),
      _jsx('section', { class: 'head', children: _jsx('h1', { children: 'Read it back' }) }),
      _jsxs('form', {
        class: 'sheet readback',
        method: 'post',
        action: action,
        enctype: 'multipart/form-data',
        novalidate: true,
        ...upgraded(action),
        children: [
          [...typed].flatMap(([name, values]) => values.map((value) => _jsx('input', { type: 'hidden', name: name, value: value }))),
          sentences.map((sentence) => _jsx('p', { children: sentence })),
          _jsx(Secret, { asks: asks, form: { problems } }),
          _jsxs('div', {
            class: 'act',
            children: [
              _jsx('button', { name: 'agreed', value: 'yes', children: button }),
              also && _jsx('button', { class: 'plain', name: 'agreed', value: also[0], children: also[1] }),
              _jsx('button', { class: 'plain', name: 'change', value: 'yes', children: 'Change something' }),
            ],
          }),
        ],
      }),
    ],
  });
}
