// Choosing: chips for a few, a select for many, a tick for something that was done or agreed, chips of days with any other beside them.
import type { Control } from '../../src/book/values.ts';
import { FieldError, inputId } from './errors.tsx';
import { described, type FieldProps, Hint, IfAny, invalid, Label, typedIn } from './labels.tsx';

type Choice = Extract<Control, { kind: 'choice' }>;
type Choices = Extract<Control, { kind: 'choices' }>;

export function Select({ name, label, hint, optional, control, form, inRow }: FieldProps & { readonly control: Choice }) {
  const chosen = typedIn(form, name);
  return (
    <div class={inRow ? 'cell' : 'field'}>
      <Label name={name} label={label} optional={optional && !inRow} />
      <Hint name={name} hint={hint} />
      <FieldError name={name} problems={form.problems} />
      <select class="text" id={inputId(name)} name={name} {...described(name, form, hint)} {...invalid(name, form)}>
        <option value="">{optional ? 'Not said' : 'Choose'}</option>
        {Object.entries(control.options).map(([code, words]) => (
          <option value={code} selected={code === chosen}>
            {words}
          </option>
        ))}
      </select>
    </div>
  );
}

export function Chips(props: FieldProps & { readonly control: Choice | Choices }) {
  const { name, label, hint, optional, control, form } = props;
  const chosen = form.typed.get(name)?.filter((code) => code !== '') ?? [];
  const often = form.often?.[name] ?? Object.keys(control.options);
  const rest = Object.keys(control.options).filter((code) => !often.includes(code));
  const chip = (code: string) => (
    <Chip
      type={control.kind === 'choice' ? 'radio' : 'checkbox'}
      name={name}
      value={code}
      words={control.options[code] ?? code}
      checked={chosen.includes(code)}
    />
  );
  return (
    <fieldset class="field" id={inputId(name)} {...described(name, form, hint)} {...invalid(name, form)}>
      <legend>
        {label}
        {optional && <IfAny />}
      </legend>
      <Hint name={name} hint={hint} />
      <FieldError name={name} problems={form.problems} />
      {control.kind === 'choices' && <input type="hidden" name={name} value="" />}
      <div class="chips">
        {often.filter((code) => code in control.options).map(chip)}
        {optional && control.kind === 'choice' && <Chip type="radio" name={name} value="" words="Not said" checked={chosen.length === 0} />}
      </div>
      {rest.length > 0 && (
        <details open={rest.some((code) => chosen.includes(code))}>
          <summary>More</summary>
          <div class="chips">{rest.map(chip)}</div>
        </details>
      )}
    </fieldset>
  );
}

interface ChipProps {
  readonly type: 'radio' | 'checkbox';
  readonly name: string;
  readonly value: string;
  readonly words: string;
  readonly checked: boolean;
}
function Chip({ type, name, value, words, checked }: ChipProps) {
  return (
    <label>
      <input type={type} name={name} value={value} checked={checked} /> {words}
    </label>
  );
}

export function Tick({ name, label, form, hint }: FieldProps) {
  return (
    <div class="field">
      <FieldError name={name} problems={form.problems} />
      <label class="tick">
        <input
          id={inputId(name)}
          type="checkbox"
          name={name}
          value="yes"
          checked={typedIn(form, name) !== ''}
          {...described(name, form, hint)}
        />
        <span>{label}</span>
      </label>
      <Hint name={name} hint={hint} />
    </div>
  );
}

/** A few days as chips and any other day beside them; the first that says something holds. */
export function DayChips({
  name,
  label,
  hint,
  form,
  days,
}: FieldProps & { readonly days: readonly (readonly [day: string, words: string])[] }) {
  const chosen = typedIn(form, name);
  const isOther = chosen !== '' && !days.some(([day]) => day === chosen);
  return (
    <fieldset class="field" id={inputId(name)} {...described(name, form, hint)} {...invalid(name, form)}>
      <legend>{label}</legend>
      <Hint name={name} hint={hint} />
      <FieldError name={name} problems={form.problems} />
      <div class="chips">
        {days.map(([day, words]) => (
          <Chip type="radio" name={name} value={day} words={words} checked={day === chosen} />
        ))}
        <Chip type="radio" name={name} value="" words="Another day" checked={isOther} />
        <input class="text short" type="date" name={name} aria-label={`${label}: another day`} value={isOther ? chosen : ''} />
      </div>
    </fieldset>
  );
}
