import { Fragment as _Fragment, jsx as _jsx, jsxs as _jsxs } from 'hono/jsx/jsx-runtime';
import { ErrorSummary } from './parts/errors.js';
import { FieldView } from './parts/field.js';
export function CalculatorView({ all }) {
  return _jsxs(_Fragment, {
    children: [
      _jsxs('section', {
        class: 'head',
        children: [
          _jsx('h1', { children: 'Calculator' }),
          _jsx('p', { class: 'soft', children: 'For planning. What it says is an estimate and is written nowhere; the balance decides.' }),
        ],
      }),
      _jsx('ul', {
        class: 'calculations',
        children: all.map(({ id, title, asks }) =>
          _jsxs('li', { children: [_jsx('a', { href: `/calculator/${id}`, children: title }), _jsx('small', { children: asks })] }),
        ),
      }),
    ],
  });
}
export function CalculationView({ title, asks, fields, typed, problems, result, sources, use }) {
  const form = { typed, problems, balances: [], tares: [], things: {} };
  return _jsxs(_Fragment, {
    children: [
      _jsx(ErrorSummary, { problems: problems, title: 'Not calculated yet' }),
      _jsxs('section', {
        class: 'head',
        children: [
          _jsx('p', { class: 'soft', children: _jsx('a', { href: '/calculator', children: 'Calculator' }) }),
          _jsx('h1', { children: title }),
          _jsx('p', { class: 'soft', children: asks }),
        ],
      }),
      result && _jsx(ResultView, { result: result, sources: sources }),
      use && use.jobs.length > 0 && _jsx(UseIt, { use: use }),
      _jsxs('form', {
        class: 'sheet',
        method: 'get',
        novalidate: true,
        children: [
          fields.map((field) => _jsx(FieldView, { ...field, form: form })),
          _jsx('div', { class: 'act wide', children: _jsx('button', { children: 'Calculate' }) }),
        ],
      }),
    ],
  });
}
function ResultView({ result, sources }) {
  return _jsxs('section', {
    class: 'result',
    role: 'status',
    children: [
      _jsx('dl', {
        children: result.rows.map(([words, value]) =>
          _jsxs('div', { children: [_jsx('dt', { children: words }), _jsx('dd', { children: value })] }),
        ),
      }),
      result.note && _jsx('p', { children: result.note }),
      _jsxs('small', { children: ['Formula ', _jsx('code', { children: result.formula })] }),
      _jsxs('details', {
        children: [
          _jsx('summary', { children: 'Where it was read' }),
          _jsx('ul', { children: sources.map((source) => _jsx('li', { children: _jsx('small', { children: source }) })) }),
        ],
      }),
    ],
  });
}
/** The result on its way into the weight of an entry, as an estimate that names its formula. */
function UseIt({ use }) {
  return _jsxs('details', {
    class: 'use',
    children: [
      _jsxs('summary', { children: ['Use ', use.text, ' ', use.unit, ' in an entry'] }),
      _jsxs('form', {
        method: 'get',
        action: '/calculator/use',
        children: [
          ['text', 'unit', 'formula'].map((name) => _jsx('input', { type: 'hidden', name: name, value: use[name] })),
          _jsx(Pick, { name: 'job', label: 'Bag', choices: use.jobs }),
          _jsx(Pick, { name: 'type', label: 'Entry', choices: use.types }),
          _jsx('button', { children: 'Go to the form' }),
        ],
      }),
    ],
  });
}
function Pick({ name, label, choices }) {
  return _jsxs('label', {
    children: [
      label,
      _jsx('select', {
        class: 'text',
        name: name,
        children: choices.map(([code, words]) => _jsx('option', { value: code, children: words })),
      }),
    ],
  });
}
