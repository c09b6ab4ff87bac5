import { Fragment as _Fragment, jsx as _jsx, jsxs as _jsxs } from 'hono/jsx/jsx-runtime';
import { Secret } from './entry-form.js';
import { ErrorSummary } from './parts/errors.js';
import { FieldView } from './parts/field.js';
import { Qr } from './parts/qr.js';
export function DevicesView({ devices, onLan, fields, typed, problems, link }) {
  return _jsxs(_Fragment, {
    children: [
      _jsx(ErrorSummary, { problems: problems, title: 'No link made yet' }),
      _jsxs('section', {
        class: 'head',
        children: [
          _jsx('h1', { children: 'Screens' }),
          !onLan &&
            _jsxs('p', {
              children: [
                'The program serves this PC alone. For tablets in the shop start it with ',
                _jsx('code', { children: 'LEMEL_MODE=lan' }),
                ' and',
                ' ',
                _jsx('code', { children: 'LEMEL_ADDRESS' }),
                ', the address of this machine.',
              ],
            }),
        ],
      }),
      link &&
        _jsxs('section', {
          class: 'enrol',
          children: [
            _jsxs('h2', { children: ['Open this on ', link.name] }),
            _jsx(Qr, { text: link.href, label: `Code of the link that enrols ${link.name}` }),
            _jsx('p', { children: _jsx('a', { href: link.href, children: link.href }) }),
            _jsx('p', {
              class: 'soft',
              children:
                'It works once, within half an hour. The tablet will say that it does not know the certificate: it is the shop\u2019s own.',
            }),
          ],
        }),
      devices.length > 0 &&
        _jsx('ul', {
          class: 'unwritten',
          children: devices.map(({ id, name, since }) =>
            _jsxs('li', {
              children: [
                _jsxs('span', { children: [_jsx('b', { children: name }), _jsxs('small', { children: ['since ', since] })] }),
                _jsxs('form', {
                  method: 'post',
                  action: '/devices/end',
                  children: [
                    _jsx('input', { type: 'hidden', name: 'device', value: id }),
                    _jsxs('button', { class: 'plain', children: ['End', _jsxs('span', { class: 'sr', children: [' ', name] })] }),
                  ],
                }),
              ],
            }),
          ),
        }),
      onLan &&
        _jsxs('form', {
          class: 'sheet',
          method: 'post',
          action: '/devices',
          novalidate: true,
          children: [
            fields.map((field) => _jsx(FieldView, { ...field, form: { typed, problems, balances: [], tares: [], things: {} } })),
            _jsx(Secret, { asks: 'password', form: { problems } }),
            _jsx('div', { class: 'act wide', children: _jsx('button', { children: 'Make a link for a new screen' }) }),
          ],
        }),
    ],
  });
}
export function EnrolView({ link, name }) {
  return _jsxs('form', {
    class: 'sheet narrow',
    method: 'post',
    action: '/enrol',
    children: [
      _jsxs('h1', { class: 'wide', children: ['Enrol this screen as \u201C', name, '\u201D?'] }),
      _jsx('p', { class: 'wide soft', children: 'Whoever stands here can then sign in with their own PIN.' }),
      _jsx('input', { type: 'hidden', name: 'key', value: link }),
      _jsx('div', { class: 'act wide', children: _jsx('button', { children: 'Enrol this screen' }) }),
    ],
  });
}
