import { Fragment as _Fragment, jsx as _jsx, jsxs as _jsxs } from 'hono/jsx/jsx-runtime';
import { ErrorSummary, FieldError } from './parts/errors.js';
import { FieldView } from './parts/field.js';
import { Cautions, Since } from './parts/notices.js';
export function EntryForm(page) {
  const { form, sections = [], fields } = page;
  const named = sections.flatMap(([, names]) => names);
  const first = fields.filter(({ name }) => !named.includes(name));
  return _jsxs(_Fragment, {
    children: [
      _jsx(ErrorSummary, { problems: form.problems, labels: Object.fromEntries(page.fields.map(({ name, label }) => [name, label])) }),
      page.since.length > 0 && _jsx(Since, { since: page.since }),
      _jsxs('section', { class: 'head', children: [_jsx('h1', { children: page.title }), page.above] }),
      _jsxs('form', {
        class: 'sheet',
        method: 'post',
        action: page.action,
        enctype: 'multipart/form-data',
        novalidate: true,
        'data-form': page.hidden.find(([name]) => name === 'formKey')?.[1],
        ...upgraded(page.action),
        children: [
          page.hidden.map(([name, value]) => _jsx('input', { type: 'hidden', name: name, value: value })),
          fields.some(({ control }) => control.kind === 'list') && _jsx('button', { hidden: true, children: page.button }),
          first.length > 0 && _jsx(Fields, { fields: first, form: form }),
          sections.map(([heading, names, folded]) =>
            _jsx(Section, {
              heading: heading,
              folded: folded === 'folded',
              fields: fields.filter(({ name }) => names.includes(name)),
              form: form,
            }),
          ),
          _jsx(Cautions, { cautions: page.cautions }),
          page.late && _jsx(Late, { form: form }),
          _jsx(Secret, { asks: page.asks, form: form }),
          _jsxs('div', { class: 'act', children: [_jsx('button', { children: page.button }), page.below] }),
        ],
      }),
    ],
  });
}
const Fields = ({ fields, form }) =>
  _jsx('div', { class: 'fields', children: fields.map((field) => _jsx(FieldView, { ...field, form: form })) });
function Section({ heading, folded, fields, form }) {
  if (fields.length === 0) return null;
  if (folded) {
    return _jsxs('details', {
      class: 'step',
      open: fields.some(({ name }) => isTouched(form, name)),
      children: [_jsx('summary', { children: heading }), _jsx(Fields, { fields: fields, form: form })],
    });
  }
  return _jsxs('section', { class: 'step', children: [_jsx('h2', { children: heading }), _jsx(Fields, { fields: fields, form: form })] });
}
const isTouched = ({ typed, problems }, name) =>
  typed.get(name)?.some((value) => value !== '') === true || problems.some(({ field }) => field.split('.')[0] === name);
/** What htmx adds to a form that works without it: one request at a time, the page's main part swapped for the answer. */
export const upgraded = (action) => ({
  'hx-post': action,
  'hx-target': '#main',
  'hx-swap': 'outerHTML',
  'hx-encoding': 'multipart/form-data',
  'hx-sync': 'this:drop',
  'hx-disable': 'find button',
  'hx-status:5xx': 'swap:none',
});
function Late({ form }) {
  return _jsxs('details', {
    open: !!form.typed.get('occurredAt')?.[0],
    children: [
      _jsx('summary', { children: 'It happened earlier' }),
      _jsx(FieldView, { name: 'occurredAt', label: 'When it happened', optional: true, control: { kind: 'instant' }, form: form }),
    ],
  });
}
/** The PIN or password that is typed again to sign for something; nothing where a session is enough. */
export function Secret({ asks, form }) {
  if (asks === 'session') return null;
  return _jsxs('div', {
    class: 'field',
    children: [
      _jsx('label', { class: 'l', for: `f-${asks}`, children: asks === 'pin' ? 'Your PIN' : 'Your password' }),
      _jsx(FieldError, { name: asks, problems: form.problems }),
      _jsx('input', {
        class: asks === 'pin' ? 'text short' : 'text',
        id: `f-${asks}`,
        name: asks,
        type: 'password',
        inputmode: asks === 'pin' ? 'numeric' : 'text',
        autocomplete: 'off',
      }),
    ],
  });
}
