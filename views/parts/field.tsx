// One generic view of every control: its label, hint, error and the inputs that post it.
import type { Control } from '../../src/book/values.ts';
import { FieldError, inputId, type Shown } from './errors.tsx';

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
}
interface Props {
  readonly name: string;
  readonly label: string;
  readonly hint?: string | undefined;
  readonly optional: boolean;
  readonly control: Control;
  readonly form: FormState;
}

export function FieldView(props: Props) {
  switch (props.control.kind) {
    case 'choice':
      if (Object.keys(props.control.options).length > CHIPS_MAX) return <Select {...props} control={props.control} />;
      return <Chips {...props} control={props.control} />;
    case 'choices':
      return <Chips {...props} control={props.control} />;
    case 'ref':
      return <Chips {...props} control={{ kind: 'choice', options: Object.fromEntries(props.form.things[props.name] ?? []) }} />;
    case 'weight':
      return <WeightView {...props} />;
    case 'group':
      return <GroupView {...props} control={props.control} />;
    case 'list':
      return <ListView {...props} control={props.control} />;
    case 'fresh':
      return <input type="hidden" name={props.name} value={typedIn(props.form, props.name)} />;
    case 'tick':
      return <Tick {...props} />;
    default:
      return <TextView {...props} />;
  }
}

const typedIn = (form: FormState, name: string) => form.typed.get(name)?.[0] ?? '';
const described = (name: string, form: FormState, hint: string | undefined) => {
  const ids = [hint && `${inputId(name)}-hint`, form.problems.some(({ field }) => field === name) && `${inputId(name)}-error`].filter(
    Boolean,
  );
  return ids.length > 0 ? { 'aria-describedby': ids.join(' ') } : {};
};
const invalid = (name: string, form: FormState) =>
  form.problems.some(({ field }) => field === name) ? { 'aria-invalid': 'true' as const } : {};

function Label({ name, label, optional }: Pick<Props, 'name' | 'label' | 'optional'>) {
  return (
    <label class="l" for={inputId(name)}>
      {label}
      {optional && <small> if there is one</small>}
    </label>
  );
}

function Hint({ name, hint }: Pick<Props, 'name' | 'hint'>) {
  return hint ? <small id={`${inputId(name)}-hint`}>{hint}</small> : null;
}

const TYPES: Readonly<Record<string, string>> = { day: 'date', instant: 'datetime-local', file: 'file' };

function TextView({ name, label, hint, optional, control, form }: Props) {
  const shared = { id: inputId(name), name, class: 'text', ...described(name, form, hint), ...invalid(name, form) };
  const secret = control.kind === 'text' && control.secret;
  const numeric = control.kind === 'count' ? 'numeric' : control.kind === 'decimal' || control.kind === 'money' ? 'decimal' : undefined;
  return (
    <div class="field">
      <Label name={name} label={label} optional={optional} />
      <Hint name={name} hint={hint} />
      <FieldError name={name} problems={form.problems} />
      {control.kind === 'text' && control.lines ? (
        <textarea {...shared} rows={3}>
          {typedIn(form, name)}
        </textarea>
      ) : (
        <span class="with-unit">
          <input
            {...shared}
            type={secret ? 'password' : (TYPES[control.kind] ?? 'text')}
            {...(control.kind === 'file' ? { accept: 'image/*', capture: 'environment' } : { value: typedIn(form, name) })}
            {...(numeric ? { inputmode: numeric } : {})}
            autocomplete="off"
          />
          {control.kind === 'decimal' && <span>{control.unit}</span>}
        </span>
      )}
    </div>
  );
}

const CHIPS_MAX = 12;

function Select({ name, label, hint, optional, control, form }: Props & { readonly control: Extract<Control, { kind: 'choice' }> }) {
  const chosen = typedIn(form, name);
  return (
    <div class="field">
      <Label name={name} label={label} optional={optional} />
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

function Chips({
  name,
  label,
  hint,
  optional,
  control,
  form,
}: Props & { readonly control: Extract<Control, { kind: 'choice' | 'choices' }> }) {
  const chosen = form.typed.get(name) ?? [];
  const type = control.kind === 'choice' ? 'radio' : 'checkbox';
  return (
    <fieldset class="field" id={inputId(name)} {...described(name, form, hint)} {...invalid(name, form)}>
      <legend>
        {label}
        {optional && <small> if there is one</small>}
      </legend>
      <Hint name={name} hint={hint} />
      <FieldError name={name} problems={form.problems} />
      {control.kind === 'choices' && <input type="hidden" name={name} value="" />}
      <div class="chips">
        {Object.entries(control.options).map(([code, words]) => (
          <label>
            <input type={type} name={name} value={code} checked={chosen.includes(code)} /> {words}
          </label>
        ))}
        {optional && control.kind === 'choice' && (
          <label>
            <input type="radio" name={name} value="" checked={chosen.length === 0 || chosen[0] === ''} /> Not said
          </label>
        )}
      </div>
    </fieldset>
  );
}

function Tick({ name, label, form, hint }: Props) {
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
        />{' '}
        {label}
      </label>
      <Hint name={name} hint={hint} />
    </div>
  );
}

function GroupView({ name, label, control, form }: Props & { readonly control: Extract<Control, { kind: 'group' }> }) {
  return (
    <fieldset class="field group" id={inputId(name)}>
      <legend>{label}</legend>
      <FieldError name={name} problems={form.problems} />
      {Object.entries(control.members).map(([member, of]) => (
        <FieldView name={`${name}.${member}`} label={of.label} optional={of.optional} control={of.control} form={form} />
      ))}
    </fieldset>
  );
}

const isFresh = (of: Control, key: string) => of.kind === 'group' && of.members[key.split('.').at(-1) ?? '']?.control.kind === 'fresh';

/** Rows that were filled in and one more; without scripts a form sent with the last row filled in is shown again with another. */
function ListView({ name, label, hint, control, form }: Props & { readonly control: Extract<Control, { kind: 'list' }> }) {
  const filled = [...form.typed.keys()].flatMap((key) =>
    key.startsWith(`${name}.`) && typedIn(form, key) !== '' && !isFresh(control.of, key)
      ? [Number.parseInt(key.slice(name.length + 1), 10)]
      : [],
  );
  const rows = Math.min(control.max, Math.max(0, ...filled.map((row) => row + 1)) + (filled.length === 0 ? 2 : 1));
  return (
    <fieldset class="field" id={inputId(name)}>
      <legend>{label}</legend>
      <Hint name={name} hint={hint} />
      <FieldError name={name} problems={form.problems} />
      {Array.from({ length: rows }, (_, row) => (
        <FieldView name={`${name}.${row}`} label={`${row + 1}`} optional={row > 0} control={control.of} form={form} />
      ))}
    </fieldset>
  );
}

function WeightView({ name, label, hint, optional, form }: Props) {
  const at = (part: string) => `${name}.${part}`;
  const chosen = typedIn(form, at('balance')) || form.balances[0]?.id;
  const expected = form.expected?.[name];
  const off = form.problems.some(({ field }) => field.startsWith(name));
  return (
    <fieldset class="field weight" id={inputId(name)}>
      <legend>
        {label}
        {optional && <small> if it was weighed</small>}
      </legend>
      <Hint name={name} hint={hint} />
      {expected && (
        <p class="expect">
          expected <b>{expected}</b>
        </p>
      )}
      <FieldError name={name} problems={form.problems} />
      <FieldError name={at('text')} problems={form.problems} />
      <FieldError name={at('balance')} problems={form.problems} />
      <div class="weigh">
        <input
          id={inputId(at('text'))}
          name={at('text')}
          inputmode="decimal"
          autocomplete="off"
          aria-label={label}
          value={typedIn(form, at('text'))}
          {...(off ? { 'aria-invalid': 'true' as const } : {})}
        />
        <span class="chips">
          {form.balances.map(({ id, name: words, unit, step }) => (
            <label>
              <input type="radio" name={at('balance')} value={id} checked={id === chosen} /> {unit} <small>{`${words}, by ${step}`}</small>
            </label>
          ))}
        </span>
      </div>
      <Basis name={name} form={form} />
      {form.asked === name && (
        <div class="again">
          <label class="l" for={inputId(at('again'))}>
            Second reading
          </label>
          <FieldError name={at('again')} problems={form.problems} />
          <input
            class="text"
            id={inputId(at('again'))}
            name={at('again')}
            inputmode="decimal"
            value={typedIn(form, at('again'))}
            autocomplete="off"
          />
          <label class="l" for={inputId(at('because'))}>
            Why it is right
          </label>
          <input class="text" id={inputId(at('because'))} name={at('because')} value={typedIn(form, at('because'))} autocomplete="off" />
        </div>
      )}
      {form.tares.length > 0 && (
        <div class="ticks" role="group" aria-label="On the pan with it">
          <small>On the pan with it</small>
          {form.tares.map((tare) => (
            <label class="tick">
              <input type="checkbox" name={at('with')} value={tare} checked={form.typed.get(at('with'))?.includes(tare) ?? false} /> {tare}
            </label>
          ))}
        </div>
      )}
    </fieldset>
  );
}

const BASES = { weighed: 'weighed', difference: 'by difference', estimate: 'estimated' } as const;

/** How the weight is known, folded away while it is the usual way; an estimate names its formula. */
function Basis({ name, form }: { readonly name: string; readonly form: FormState }) {
  const at = (part: string) => `${name}.${part}`;
  const basis = typedIn(form, at('basis')) || 'weighed';
  const unit = typedIn(form, at('unit')) || 'g';
  return (
    <details class="basis" open={basis !== 'weighed'}>
      <summary>Not from a balance</summary>
      <div class="chips" role="radiogroup" aria-label="How it is known">
        {Object.entries(BASES).map(([code, words]) => (
          <label>
            <input type="radio" name={at('basis')} value={code} checked={code === basis} /> {words}
          </label>
        ))}
      </div>
      <div class="chips" role="radiogroup" aria-label="Unit, unless weighed">
        {['g', 'ct'].map((one) => (
          <label>
            <input type="radio" name={at('unit')} value={one} checked={one === unit} /> {one}
          </label>
        ))}
      </div>
      <label class="l" for={inputId(at('formula'))}>
        Formula of an estimate
      </label>
      <input class="text" id={inputId(at('formula'))} name={at('formula')} value={typedIn(form, at('formula'))} autocomplete="off" />
      <small>
        <a href="/calculator">Calculator</a>
      </small>
    </details>
  );
}
