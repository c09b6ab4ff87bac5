// What every field has: what the form knows, a label, a hint, and the attributes that tie them to the input.
import type { Control } from '../../src/book/values.ts';
import { inputId, type Shown } from './errors.tsx';

/** What is on a form besides its fields: what was typed, what is wrong, and the things that may be chosen. */
export interface FormState {
  readonly typed: ReadonlyMap<string, readonly string[]>;
  readonly problems: readonly Shown[];
  /** The weight that is asked for again, with a reason. */
  readonly asked?: string;
  readonly balances: readonly { readonly id: string; readonly name: string; readonly unit: string; readonly step: string }[];
  readonly tares: readonly string[];
  /** Words for what is expected on the pan, by field. */
  readonly expected?: Readonly<Record<string, string>>;
  /** Things that a reference may name, by field: id and words. */
  readonly things: Readonly<Record<string, readonly (readonly [id: string, words: string])[]>>;
  /** Codes shown at once, by field; the others stand under "More". */
  readonly often?: Readonly<Record<string, readonly string[] | undefined>>;
  /** Days to choose from, by field: the date and its words. */
  readonly days?: Readonly<Record<string, readonly (readonly [day: string, words: string])[]>>;
}
export interface FieldProps {
  readonly name: string;
  readonly label: string;
  readonly hint?: string | undefined;
  readonly optional: boolean;
  readonly control: Control;
  readonly form: FormState;
  /** Small, in a row of a list. */
  readonly inRow?: boolean;
}

export const typedIn = (form: FormState, name: string): string => form.typed.get(name)?.[0] ?? '';

export function described(name: string, form: FormState, hint: string | undefined) {
  const ids = [hint && `${inputId(name)}-hint`, form.problems.some(({ field }) => field === name) && `${inputId(name)}-error`];
  const said = ids.filter(Boolean);
  return said.length > 0 ? { 'aria-describedby': said.join(' ') } : {};
}

export const invalid = (name: string, form: FormState) =>
  form.problems.some(({ field }) => field === name) ? { 'aria-invalid': 'true' as const } : {};

export function Label({ name, label, optional }: Pick<FieldProps, 'name' | 'label' | 'optional'>) {
  return (
    <label class="l" for={inputId(name)}>
      {label}
      {optional && <IfAny />}
    </label>
  );
}

export const IfAny = () => <small> if any</small>;

export function Hint({ name, hint }: Pick<FieldProps, 'name' | 'hint'>) {
  return hint ? <small id={`${inputId(name)}-hint`}>{hint}</small> : null;
}
