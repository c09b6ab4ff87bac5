import { jsx as _jsx, jsxs as _jsxs } from 'hono/jsx/jsx-runtime';
import { inputId } from './errors.js';
export const typedIn = (form, name) => form.typed.get(name)?.[0] ?? '';
export function described(name, form, hint) {
  const ids = [hint && `${inputId(name)}-hint`, form.problems.some(({ field }) => field === name) && `${inputId(name)}-error`];
  const said = ids.filter(Boolean);
  return said.length > 0 ? { 'aria-describedby': said.join(' ') } : {};
}
export const invalid = (name, form) => (form.problems.some(({ field }) => field === name) ? { 'aria-invalid': 'true' } : {});
export function Label({ name, label, optional }) {
  return _jsxs('label', { class: 'l', for: inputId(name), children: [label, optional && _jsx(IfAny, {})] });
}
export const IfAny = () => _jsx('small', { children: ' if any' });
export function Hint({ name, hint }) {
  return hint ? _jsx('small', { id: `${inputId(name)}-hint`, children: hint }) : null;
}
