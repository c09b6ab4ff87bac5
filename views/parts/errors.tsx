// The summary at the top of a form that was not written: what is wrong, what to do, and a link to each field.
export interface Shown {
  readonly field: string;
  readonly say: string;
}

/** The id of the input for a posted name; dots are legal in ids but not in selectors. */
export const inputId = (name: string): string => `f-${name.replaceAll('.', '-')}`;

interface Summary {
  readonly problems: readonly Shown[];
  readonly title?: string;
  /** Words of the fields by name, said before what is wrong with each. */
  readonly labels?: Readonly<Record<string, string>>;
}

export function ErrorSummary({ problems, title = 'Not written yet', labels = {} }: Summary) {
  if (problems.length === 0) return null;
  return (
    <div class="summary" role="alert" tabindex={-1} autofocus>
      <h2>{title}</h2>
      <ul>
        {problems.map(({ field, say }) => (
          <li>
            {field === '' ? (
              say
            ) : (
              <a href={`#${inputId(field)}`}>
                {labels[field.split('.')[0] ?? ''] && `${labels[field.split('.')[0] ?? '']}: `}
                {say}
              </a>
            )}
          </li>
        ))}
      </ul>
    </div>
  );
}

/** The problem of one field, beside it. */
export function FieldError({ name, problems }: { readonly name: string; readonly problems: readonly Shown[] }) {
  const mine = problems.filter(({ field }) => field === name);
  if (mine.length === 0) return null;
  return (
    <p class="error" id={`${inputId(name)}-error`}>
      {mine.map(({ say }) => say).join(' ')}
    </p>
  );
}
