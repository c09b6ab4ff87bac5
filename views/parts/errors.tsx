// The summary at the top of a form that was not written: what is wrong, what to do, and a link to each field.
import { type Control, memberNamed } from '../../src/book/values.ts';

export interface Shown {
  readonly field: string;
  readonly say: string;
}

/** The id of the input for a posted name; dots are legal in ids but not in selectors. */
export const inputId = (name: string): string => `f-${name.replaceAll('.', '-')}`;

interface Summary {
  readonly problems: readonly Shown[];
  readonly title?: string;
  /** Words of what is wrong by its posted name, said before what is wrong with each. */
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
                {Object.hasOwn(labels, field) && `${labels[field]}: `}
                {say}
              </a>
            )}
          </li>
        ))}
      </ul>
    </div>
  );
}

interface Labelled {
  readonly name: string;
  readonly label: string;
  readonly control: Control;
}
/** The words of each posted name that something is wrong with: its field's, and the row and the member where it has them. */
export function labelsOf(fields: readonly Labelled[], problems: readonly Shown[]): Readonly<Record<string, string>> {
  return Object.fromEntries(
    problems.flatMap(({ field }) => {
      const [name, ...path] = field.split('.');
      const of = fields.find((one) => one.name === name);
      return of ? [[field, labelAt(of.label, of.control, path)]] : [];
    }),
  );
}
function labelAt(label: string, control: Control, [at, ...path]: readonly string[]): string {
  if (at === undefined) return label;
  if (control.kind === 'list') return labelAt(`${label}, ${Number(at) + 1}`, control.of, path);
  const member = memberNamed(control, at);
  return member ? labelAt(`${label}, ${member.label}`, member.control, path) : label;
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
