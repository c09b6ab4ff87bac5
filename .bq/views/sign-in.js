import { Fragment as _Fragment, jsx as _jsx, jsxs as _jsxs } from 'hono/jsx/jsx-runtime';
// Sign-in: a name and a PIN.
import { ErrorSummary, FieldError } from './parts/errors.js';
export function SignIn({ staff, back, problems, chosen, nobody, begun }) {
  if (!begun) {
    return _jsxs('section', {
      class: 'head',
      children: [
        _jsx('h1', { children: 'This ledger has not been started' }),
        _jsx('p', {
          children:
            'Open the link that was printed where the program runs. It works once, within half an hour; start the program again for a new one.',
        }),
      ],
    });
  }
  return _jsxs(_Fragment, {
    children: [
      _jsx(ErrorSummary, { problems: problems }),
      _jsxs('section', {
        class: 'head',
        children: [
          _jsx('h1', { children: 'Who is at the bench?' }),
          nobody &&
            _jsxs('p', {
              class: 'again',
              children: [
                'Nobody can sign in: the PINs are gone. The entries are not. Run ',
                _jsx('code', { children: 'node dist/src/cli.js owner-pin' }),
                ' on this machine to give the owner a new one.',
              ],
            }),
        ],
      }),
      _jsxs('form', {
        class: 'sheet narrow',
        method: 'post',
        action: '/sign-in',
        children: [
          _jsx('input', { type: 'hidden', name: 'back', value: back }),
          _jsxs('fieldset', {
            class: 'field wide',
            id: 'f-person',
            children: [
              _jsx('legend', { children: 'Your name' }),
              _jsx(FieldError, { name: 'person', problems: problems }),
              _jsx('div', {
                class: 'chips',
                children: staff.map(([id, name]) =>
                  _jsxs('label', {
                    children: [_jsx('input', { type: 'radio', name: 'person', value: id, checked: id === chosen }), ' ', name],
                  }),
                ),
              }),
            ],
          }),
          _jsxs('div', {
            class: 'field wide',
            children: [
              _jsx('label', { class: 'l', for: 'f-pin', children: 'PIN' }),
              _jsx(FieldError, { name: 'pin', problems: problems }),
              _jsx('input', { class: 'text', id: 'f-pin', name: 'pin', type: 'password', inputmode: 'numeric', autocomplete: 'off' }),
            ],
          }),
          _jsx('div', { class: 'act wide', children: _jsx('button', { children: 'Sign in' }) }),
        ],
      }),
    ],
  });
}
