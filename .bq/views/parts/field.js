import { Fragment as _Fragment, jsx as _jsx, jsxs as _jsxs } from 'hono/jsx/jsx-runtime';
import { Chips, DayChips, Select, Tick } from './choices.js';
import { FieldError, inputId } from './errors.js';
import { described, Hint, invalid, Label, typedIn } from './labels.js';
import { GroupView, ListView } from './rows.js';
import { WeightView } from './weight.js';

/** A choice of at most so many is a row of chips; a longer one is a select, unless the form says what is often chosen. */
const CHIPS_MAX = 5;
/** Text of so few characters is asked for in a short box. */
const SHORT_MAX = 20;
export function FieldView(props) {
  const { control, name, form } = props;
  switch (control.kind) {
    case 'choice':
      if (props.inRow || (Object.keys(control.options).length > CHIPS_MAX && !form.often?.[name]))
        return _jsx(Select, { ...props, control: control });
      return _jsx(Chips, { ...props, control: control });
    case 'choices':
      return _jsx(Chips, { ...props, control: control });
    case 'ref':
      return _jsx(RefView, { ...props });
    case 'weight':
      return _jsx(WeightView, { ...props });
    case 'group':
      return _jsx(GroupView, { ...props, control: control, One: FieldView });
    case 'list':
      return _jsx(ListView, { ...props, control: control, One: FieldView });
    case 'fresh':
      return _jsx('input', { type: 'hidden', name: name, value: typedIn(form, name) });
    case 'tick':
      return _jsx(Tick, { ...props });
    case 'day':
      return form.days?.[name] ? _jsx(DayChips, { ...props, days: form.days[name] }) : _jsx(TextView, { ...props });
    case 'file':
      return _jsx(FileView, { ...props });
    default:
      return _jsx(TextView, { ...props });
  }
}
/** Things by their words, those that are many in a select. */
function RefView(props) {
  const control = { kind: 'choice', options: Object.fromEntries(props.form.things[props.name] ?? []) };
  return Object.keys(control.options).length > CHIPS_MAX
    ? _jsx(Select, { ...props, control: control })
    : _jsx(Chips, { ...props, control: control });
}
const TYPES = { day: 'date', instant: 'datetime-local' };
function inputModeOf(control) {
  if (control.kind === 'count') return 'numeric';
  return control.kind === 'decimal' || control.kind === 'money' ? 'decimal' : undefined;
}
function TextView({ name, label, hint, optional, control, form, inRow }) {
  const short = ['count', 'decimal', 'money'].includes(control.kind) || (control.kind === 'text' && control.max <= SHORT_MAX);
  const shared = { id: inputId(name), name, class: short ? 'text short' : 'text', ...described(name, form, hint), ...invalid(name, form) };
  const mode = inputModeOf(control);
  return _jsxs('div', {
    class: inRow ? 'cell' : 'field',
    children: [
      _jsx(Label, { name: name, label: label, optional: optional && !inRow }),
      _jsx(Hint, { name: name, hint: hint }),
      _jsx(FieldError, { name: name, problems: form.problems }),
      control.kind === 'text' && control.lines
        ? _jsx('textarea', { ...shared, rows: 3, children: typedIn(form, name) })
        : _jsxs('span', {
            class: 'with-unit',
            children: [
              _jsx('input', {
                ...shared,
                type: control.kind === 'text' && control.secret ? 'password' : (TYPES[control.kind] ?? 'text'),
                value: typedIn(form, name),
                ...(mode ? { inputmode: mode } : {}),
                autocomplete: 'off',
              }),
              control.kind === 'decimal' && _jsx('span', { children: control.unit }),
            ],
          }),
    ],
  });
}
/** A photograph: the camera on a phone; one that was kept already is shown and stays unless another is taken. */
function FileView({ name, label, hint, optional, form, inRow }) {
  const kept = typedIn(form, name);
  return _jsxs('div', {
    class: inRow ? 'cell' : 'field',
    children: [
      _jsx(Label, { name: name, label: label, optional: optional }),
      _jsx(Hint, { name: name, hint: hint }),
      _jsx(FieldError, { name: name, problems: form.problems }),
      _jsxs('div', {
        class: 'photo',
        children: [
          kept !== '' &&
            _jsxs(_Fragment, {
              children: [
                _jsx('input', { type: 'hidden', name: name, value: kept }),
                _jsx('img', { src: `/photos/${kept}`, alt: 'The photograph that was taken' }),
              ],
            }),
          _jsx('input', {
            id: inputId(name),
            name: name,
            type: 'file',
            accept: 'image/jpeg,image/png,image/webp',
            capture: 'environment',
            ...described(name, form, hint),
            ...invalid(name, form),
          }),
        ],
      }),
    ],
  });
}
