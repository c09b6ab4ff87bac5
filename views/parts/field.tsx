// One generic view of every control: its label, hint, error and the inputs that post it.
import type { Control } from '../../src/book/values.ts';
import { Chips, DayChips, Select, Tick } from './choices.tsx';
import { FieldError, inputId } from './errors.tsx';
import { described, type FieldProps, Hint, invalid, Label, typedIn } from './labels.tsx';
import { GroupView, ListView } from './rows.tsx';
import { WeightView } from './weight.tsx';

export type { FormState } from './labels.tsx';

/** A choice of at most so many is a row of chips; a longer one is a select, unless the form says what is often chosen. */
const CHIPS_MAX = 5;
/** Text of so few characters is asked for in a short box; text that may have more than so many is a page, and written in a tall one. */
const SHORT_MAX = 20;
const PAGE_MIN = 2500;

export function FieldView(props: FieldProps) {
  const { control, name, form } = props;
  switch (control.kind) {
    case 'choice':
      if (props.inRow || (Object.keys(control.options).length > CHIPS_MAX && !form.often?.[name]))
        return <Select {...props} control={control} />;
      return <Chips {...props} control={control} />;
    case 'choices':
      return <Chips {...props} control={control} />;
    case 'ref':
      return <RefView {...props} />;
    case 'weight':
      return <WeightView {...props} />;
    case 'group':
      return <GroupView {...props} control={control} One={FieldView} />;
    case 'list':
      return <ListView {...props} control={control} One={FieldView} />;
    case 'fresh':
      return <input type="hidden" name={name} value={typedIn(form, name)} />;
    case 'tick':
      return <Tick {...props} />;
    case 'day':
      return form.days?.[name] ? <DayChips {...props} days={form.days[name]} /> : <TextView {...props} />;
    case 'file':
      return <FileView {...props} />;
    default:
      return <TextView {...props} />;
  }
}

/** Things by their words, those that are many in a select. */
function RefView(props: FieldProps) {
  const control = { kind: 'choice', options: Object.fromEntries(props.form.things[props.name] ?? []) } as const;
  return Object.keys(control.options).length > CHIPS_MAX ? <Select {...props} control={control} /> : <Chips {...props} control={control} />;
}

const TYPES: Readonly<Record<string, string>> = { day: 'date', instant: 'datetime-local' };

function inputModeOf(control: Control): 'numeric' | 'decimal' | undefined {
  if (control.kind === 'count') return 'numeric';
  return control.kind === 'decimal' || control.kind === 'money' ? 'decimal' : undefined;
}

function TextView({ name, label, hint, optional, control, form, inRow }: FieldProps) {
  const short = ['count', 'decimal', 'money'].includes(control.kind) || (control.kind === 'text' && control.max <= SHORT_MAX);
  const shared = { id: inputId(name), name, class: short ? 'text short' : 'text', ...described(name, form, hint), ...invalid(name, form) };
  const mode = inputModeOf(control);
  const isPage = control.kind === 'text' && control.max > PAGE_MIN;
  return (
    <div class={inRow ? 'cell' : isPage ? 'field wide' : 'field'}>
      <Label name={name} label={label} optional={optional && !inRow} />
      <Hint name={name} hint={hint} />
      <FieldError name={name} problems={form.problems} />
      {control.kind === 'text' && control.lines ? (
        <textarea {...shared} rows={isPage ? 16 : 3}>
          {typedIn(form, name)}
        </textarea>
      ) : (
        <span class="with-unit">
          <input
            {...shared}
            type={control.kind === 'text' && control.secret ? 'password' : (TYPES[control.kind] ?? 'text')}
            value={typedIn(form, name)}
            {...(mode ? { inputmode: mode } : {})}
            autocomplete="off"
          />
          {control.kind === 'decimal' && <span>{control.unit}</span>}
        </span>
      )}
    </div>
  );
}

/** A photograph: the camera on a phone; one that was kept already is shown and stays unless another is taken. */
function FileView({ name, label, hint, optional, form, inRow }: FieldProps) {
  const kept = typedIn(form, name);
  return (
    <div class={inRow ? 'cell' : 'field'}>
      <Label name={name} label={label} optional={optional} />
      <Hint name={name} hint={hint} />
      <FieldError name={name} problems={form.problems} />
      <div class="photo">
        {kept !== '' && (
          <>
            <input type="hidden" name={name} value={kept} />
            <img src={`/photos/${kept}`} alt="The photograph that was taken" />
          </>
        )}
        <input
          id={inputId(name)}
          name={name}
          type="file"
          accept="image/jpeg,image/png,image/webp"
          capture="environment"
          {...described(name, form, hint)}
          {...invalid(name, form)}
        />
      </div>
    </div>
  );
}
