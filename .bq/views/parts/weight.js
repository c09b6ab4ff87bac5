import { Fragment as _Fragment, jsx as _jsx, jsxs as _jsxs } from 'hono/jsx/jsx-runtime';
// A weight: the biggest thing on its screen, with what is expected beside it, the balance it is read on, and what else is on the pan.
import { FieldError, inputId } from './errors.js';
import { Hint, IfAny, typedIn } from './labels.js';
export function WeightView({ name, label, hint, optional, form }) {
  const at = (part) => `${name}.${part}`;
  const expected = form.expected?.[name];
  const off = form.problems.some(({ field }) => field.startsWith(name));
  return _jsxs('fieldset', {
    class: 'field weight',
    id: inputId(name),
    children: [
      _jsxs('legend', { children: [label, optional && _jsx(IfAny, {})] }),
      _jsx(Hint, { name: name, hint: hint }),
      expected && _jsxs('p', { class: 'expect', children: ['expected ', _jsx('b', { children: expected })] }),
      [name, at('text'), at('balance')].map((field) => _jsx(FieldError, { name: field, problems: form.problems })),
      _jsxs('div', {
        class: 'weigh',
        children: [
          _jsx('input', {
            id: inputId(at('text')),
            name: at('text'),
            inputmode: 'decimal',
            autocomplete: 'off',
            'aria-label': label,
            value: typedIn(form, at('text')),
            ...(off ? { 'aria-invalid': 'true' } : {}),
          }),
          _jsx(OnBalance, { name: at('balance'), form: form }),
        ],
      }),
      _jsx(Basis, { name: name, form: form }),
      form.asked === name && _jsx(Again, { name: name, form: form }),
      form.tares.length > 0 &&
        _jsxs('div', {
          class: 'ticks',
          role: 'group',
          'aria-label': 'On the pan with it',
          children: [
            _jsx('small', { children: 'On the pan with it' }),
            form.tares.map((tare) =>
              _jsxs('label', {
                class: 'tick',
                children: [
                  _jsx('input', {
                    type: 'checkbox',
                    name: at('with'),
                    value: tare,
                    checked: form.typed.get(at('with'))?.includes(tare) ?? false,
                  }),
                  _jsx('span', { children: tare }),
                ],
              }),
            ),
          ],
        }),
    ],
  });
}
/** The one balance there is, or a choice among several. */
function OnBalance({ name, form }) {
  const [only, ...others] = form.balances;
  const chosen = typedIn(form, name) || only?.id;
  if (only && others.length === 0) {
    return _jsxs(_Fragment, {
      children: [
        _jsx('input', { type: 'hidden', name: name, value: only.id }),
        _jsxs('span', { class: 'unit', children: [only.unit, ' ', _jsx('small', { children: `${only.name}, reads to ${only.step}` })] }),
      ],
    });
  }
  return _jsx('span', {
    class: 'chips',
    children: form.balances.map(({ id, name: words, unit, step }) =>
      _jsxs('label', {
        children: [
          _jsx('input', { type: 'radio', name: name, value: id, checked: id === chosen }),
          ' ',
          unit,
          ' ',
          _jsx('small', { children: `${words}, to ${step}` }),
        ],
      }),
    ),
  });
}
/** The second reading and its reason, where a weight is asked for again. */
function Again({ name, form }) {
  const parts = [
    ['again', 'Second reading'],
    ['because', 'Why it is right'],
  ];
  return _jsx('div', {
    class: 'again',
    children: parts.map(([part, words]) =>
      _jsxs('div', {
        class: 'field',
        children: [
          _jsx('label', { class: 'l', for: inputId(`${name}.${part}`), children: words }),
          _jsx(FieldError, { name: `${name}.${part}`, problems: form.problems }),
          _jsx('input', {
            class: part === 'again' ? 'text short' : 'text',
            id: inputId(`${name}.${part}`),
            name: `${name}.${part}`,
            ...(part === 'again' ? { inputmode: 'decimal' } : {}),
            value: typedIn(form, `${name}.${part}`),
            autocomplete: 'off',
          }),
        ],
      }),
    ),
  });
}
const BASES = { weighed: 'weighed', difference: 'by difference', estimate: 'estimated' };
const UNITS = { g: 'g', ct: 'ct' };
/** How the weight is known, folded away while it is the usual way; an estimate names its formula. */
function Basis({ name, form }) {
  const at = (part) => `${name}.${part}`;
  const basis = typedIn(form, at('basis')) || 'weighed';
  const chips = (part, words, options, chosen) =>
    _jsx('div', {
      class: 'chips',
      role: 'radiogroup',
      'aria-label': words,
      children: Object.entries(options).map(([code, said]) =>
        _jsxs('label', { children: [_jsx('input', { type: 'radio', name: at(part), value: code, checked: code === chosen }), ' ', said] }),
      ),
    });
  return _jsxs('details', {
    open: basis !== 'weighed',
    children: [
      _jsx('summary', { children: 'Not from a balance' }),
      chips('basis', 'How it is known', BASES, basis),
      chips('unit', 'Unit, unless weighed', UNITS, typedIn(form, at('unit')) || 'g'),
      _jsx('label', { class: 'l', for: inputId(at('formula')), children: 'Formula of an estimate' }),
      _jsx('input', {
        class: 'text',
        id: inputId(at('formula')),
        name: at('formula'),
        value: typedIn(form, at('formula')),
        autocomplete: 'off',
      }),
      _jsx('a', { href: '/calculator', children: 'Calculator' }),
    ],
  });
}
