import { jsx as _jsx, jsxs as _jsxs } from 'hono/jsx/jsx-runtime';
/** The id of the input for a posted name; dots are legal in ids but not in selectors. */
export const inputId = (name) => `f-${name.replaceAll('.', '-')}`;
export function ErrorSummary({ problems, title = 'Not written yet', labels = {} }) {
  if (problems.length === 0) return null;
  return _jsxs('div', {
    class: 'summary',
    role: 'alert',
    tabindex: -1,
    autofocus: true,
    children: [
      _jsx('h2', { children: title }),
      _jsx('ul', {
        children: problems.map(({ field, say }) =>
          _jsx('li', {
            children:
              field === ''
                ? say
                : _jsxs('a', {
                    href: `#${inputId(field)}`,
                    children: [labels[field.split('.')[0] ?? ''] && `${labels[field.split('.')[0] ?? '']}: `, say],
                  }),
          }),
        ),
      }),
    ],
  });
}
/** The problem of one field, beside it. */
export function FieldError({ name, problems }) {
  const mine = problems.filter(({ field }) => field === name);
  if (mine.length === 0) return null;
  return _jsx('p', { class: 'error', id: `${inputId(name)}-error`, children: mine.map(({ say }) => say).join(' ') });
}
