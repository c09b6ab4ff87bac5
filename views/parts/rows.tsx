// Several values that belong together, and lists of them: one compact row for each, one empty row, and a button for one more.
import type { FC } from 'hono/jsx';
import { type Control, memberNamed } from '../../src/book/values.ts';
import { FieldError, inputId } from './errors.tsx';
import { type FieldProps, Hint, IfAny, typedIn } from './labels.tsx';

type Group = Extract<Control, { kind: 'group' }>;
type List = Extract<Control, { kind: 'list' }>;
/** How one value is shown, whatever its control: handed in by the view of every control. */
type One = FC<FieldProps>;

export function GroupView({ name, label, control, form, inRow, One }: FieldProps & { readonly control: Group; readonly One: One }) {
  return (
    <fieldset class={inRow ? 'row' : 'field'} id={inputId(name)}>
      <legend>{label}</legend>
      <FieldError name={name} problems={form.problems} />
      {Object.entries(control.members).map(([member, of]) => (
        <One name={`${name}.${member}`} label={of.label} optional={of.optional} control={of.control} form={form} inRow />
      ))}
    </fieldset>
  );
}

const isFresh = (of: Control, key: string) => memberNamed(of, key.split('.').at(-1) ?? '')?.control.kind === 'fresh';
/** The number of the row that a posted name is in; none where what stands there is no number. */
const rowOf = (list: string, key: string) => (key.startsWith(`${list}.`) ? /^\d+/.exec(key.slice(list.length + 1))?.[0] : undefined);

/** Rows that were filled in and one more, or as many as were asked for with "Add a row". */
export function ListView({ name, label, hint, optional, control, form, One }: FieldProps & { readonly control: List; readonly One: One }) {
  const filled = [...form.typed.keys()].flatMap((key) => {
    const row = rowOf(name, key);
    return row !== undefined && typedIn(form, key) !== '' && !isFresh(control.of, key) ? [Number(row) + 1] : [];
  });
  const rows = Math.min(control.max, Math.max(Math.max(0, ...filled) + (optional ? 1 : 0), 1, Number(typedIn(form, `rows.${name}`)) || 0));
  return (
    <fieldset class="field wide listed" id={inputId(name)}>
      <legend>
        {label}
        {optional && <IfAny />}
      </legend>
      <Hint name={name} hint={hint} />
      <FieldError name={name} problems={form.problems} />
      <input type="hidden" name={`rows.${name}`} value={String(rows)} />
      {Array.from({ length: rows }, (_, row) => (
        <One name={`${name}.${row}`} label={`${row + 1}`} optional={row > 0} control={control.of} form={form} inRow />
      ))}
      {rows < control.max && (
        <button class="plain" name="addRow" value={name}>
          Add a row
        </button>
      )}
    </fieldset>
  );
}
