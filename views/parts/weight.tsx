// A weight: the biggest thing on its screen, with what is expected beside it, the balance it is read on, and what else is on the pan.
import { FieldError, inputId } from './errors.tsx';
import { type FieldProps, type FormState, Hint, IfAny, typedIn } from './labels.tsx';

export function WeightView({ name, label, hint, optional, form }: FieldProps) {
  const at = (part: string) => `${name}.${part}`;
  const expected = form.expected?.[name];
  const off = form.problems.some(({ field }) => field.startsWith(name));
  return (
    <fieldset class="field weight" id={inputId(name)}>
      <legend>
        {label}
        {optional && <IfAny />}
      </legend>
      <Hint name={name} hint={hint} />
      {expected && (
        <p class="expect">
          expected <b>{expected}</b>
        </p>
      )}
      {[name, at('text'), at('balance')].map((field) => (
        <FieldError name={field} problems={form.problems} />
      ))}
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
        <OnBalance name={at('balance')} form={form} />
      </div>
      <Basis name={name} form={form} />
      {form.asked === name && <Again name={name} form={form} />}
      {form.tares.length > 0 && (
        <div class="ticks" role="group" aria-label="On the pan with it">
          <small>On the pan with it</small>
          {form.tares.map((tare) => (
            <label class="tick">
              <input type="checkbox" name={at('with')} value={tare} checked={form.typed.get(at('with'))?.includes(tare) ?? false} />
              <span>{tare}</span>
            </label>
          ))}
        </div>
      )}
    </fieldset>
  );
}

/** The one balance there is, or a choice among several. */
function OnBalance({ name, form }: { readonly name: string; readonly form: FormState }) {
  const [only, ...others] = form.balances;
  const chosen = typedIn(form, name) || only?.id;
  if (only && others.length === 0) {
    return (
      <>
        <input type="hidden" name={name} value={only.id} />
        <span class="unit">
          {only.unit} <small>{`${only.name}, reads to ${only.step}`}</small>
        </span>
      </>
    );
  }
  return (
    <span class="chips">
      {form.balances.map(({ id, name: words, unit, step }) => (
        <label>
          <input type="radio" name={name} value={id} checked={id === chosen} /> {unit} <small>{`${words}, to ${step}`}</small>
        </label>
      ))}
    </span>
  );
}

/** The second reading and its reason, where a weight is asked for again. */
function Again({ name, form }: { readonly name: string; readonly form: FormState }) {
  const parts = [
    ['again', 'Second reading'],
    ['because', 'Why it is right'],
  ] as const;
  return (
    <div class="again">
      {parts.map(([part, words]) => (
        <div class="field">
          <label class="l" for={inputId(`${name}.${part}`)}>
            {words}
          </label>
          <FieldError name={`${name}.${part}`} problems={form.problems} />
          <input
            class={part === 'again' ? 'text short' : 'text'}
            id={inputId(`${name}.${part}`)}
            name={`${name}.${part}`}
            {...(part === 'again' ? { inputmode: 'decimal' as const } : {})}
            value={typedIn(form, `${name}.${part}`)}
            autocomplete="off"
          />
        </div>
      ))}
    </div>
  );
}

const BASES = { weighed: 'weighed', difference: 'by difference', estimate: 'estimated' } as const;
const UNITS = { g: 'g', ct: 'ct' } as const;

/** How the weight is known, folded away while it is the usual way; an estimate names its formula. */
function Basis({ name, form }: { readonly name: string; readonly form: FormState }) {
  const at = (part: string) => `${name}.${part}`;
  const basis = typedIn(form, at('basis')) || 'weighed';
  const chips = (part: string, words: string, options: Readonly<Record<string, string>>, chosen: string) => (
    <div class="chips" role="radiogroup" aria-label={words}>
      {Object.entries(options).map(([code, said]) => (
        <label>
          <input type="radio" name={at(part)} value={code} checked={code === chosen} /> {said}
        </label>
      ))}
    </div>
  );
  return (
    <details open={basis !== 'weighed'}>
      <summary>Not from a balance</summary>
      {chips('basis', 'How it is known', BASES, basis)}
      {chips('unit', 'Unit, unless weighed', UNITS, typedIn(form, at('unit')) || 'g')}
      <label class="l" for={inputId(at('formula'))}>
        Formula of an estimate
      </label>
      <input class="text" id={inputId(at('formula'))} name={at('formula')} value={typedIn(form, at('formula'))} autocomplete="off" />
      <a href="/calculator">Calculator</a>
    </details>
  );
}
