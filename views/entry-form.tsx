// One form for any entry or sheet: the summary of what is wrong, its fields under their headings, its cautions, the PIN where it is asked for.
import type { Child } from 'hono/jsx';
import type { Control } from '../src/book/values.ts';
import { ErrorSummary, FieldError, labelsOf } from './parts/errors.tsx';
import { FieldView, type FormState } from './parts/field.tsx';
import { Cautions, Since } from './parts/notices.tsx';

interface ShownField {
  readonly name: string;
  readonly label: string;
  readonly hint?: string | undefined;
  readonly optional: boolean;
  readonly control: Control;
}
export interface FormPage {
  readonly title: string;
  readonly action: string;
  readonly button: string;
  readonly fields: readonly ShownField[];
  /** Which fields stand under which heading; those named nowhere stand first. */
  readonly sections?: readonly (readonly [heading: string, fields: readonly string[], folded?: 'folded'])[];
  readonly form: FormState;
  readonly hidden: readonly (readonly [string, string])[];
  readonly cautions: readonly string[];
  /** What is typed again to sign for it. */
  readonly asks: Asks;
  /** Entries somebody else wrote while this was typed. */
  readonly since: readonly number[];
  /** Asks when it happened, for what is written afterwards. */
  readonly late: boolean;
  readonly above?: Child;
  readonly below?: Child;
}

export function EntryForm(page: FormPage) {
  const { form, sections = [], fields } = page;
  const named = sections.flatMap(([, names]) => names);
  const first = fields.filter(({ name }) => !named.includes(name));
  return (
    <>
      <ErrorSummary problems={form.problems} labels={labelsOf(fields, form.problems)} />
      {page.since.length > 0 && <Since since={page.since} />}
      <section class="head">
        <h1>{page.title}</h1>
        {page.above}
      </section>
      <form
        class="sheet"
        method="post"
        action={page.action}
        enctype="multipart/form-data"
        novalidate
        data-form={page.hidden.find(([name]) => name === 'formKey')?.[1]}
        {...upgraded(page.action)}
      >
        {page.hidden.map(([name, value]) => (
          <input type="hidden" name={name} value={value} />
        ))}
        {fields.some(({ control }) => control.kind === 'list') && <button hidden>{page.button}</button>}
        {first.length > 0 && <Fields fields={first} form={form} />}
        {sections.map(([heading, names, folded]) => (
          <Section heading={heading} folded={folded === 'folded'} fields={fields.filter(({ name }) => names.includes(name))} form={form} />
        ))}
        <Cautions cautions={page.cautions} />
        {page.late && <Late form={form} />}
        <Secret asks={page.asks} form={form} />
        <div class="act">
          <button>{page.button}</button>
          {page.below}
        </div>
      </form>
    </>
  );
}

type Some = { readonly fields: readonly ShownField[]; readonly form: FormState };

const Fields = ({ fields, form }: Some) => (
  <div class="fields">
    {fields.map((field) => (
      <FieldView {...field} form={form} />
    ))}
  </div>
);

function Section({ heading, folded, fields, form }: Some & { readonly heading: string; readonly folded: boolean }) {
  if (fields.length === 0) return null;
  if (folded) {
    return (
      <details class="step" open={fields.some(({ name }) => isTouched(form, name))}>
        <summary>{heading}</summary>
        <Fields fields={fields} form={form} />
      </details>
    );
  }
  return (
    <section class="step">
      <h2>{heading}</h2>
      <Fields fields={fields} form={form} />
    </section>
  );
}

const isTouched = ({ typed, problems }: FormState, name: string): boolean =>
  [name, `${name}.text`].some((posted) => typed.get(posted)?.some((value) => value !== '')) ||
  problems.some(({ field }) => field.split('.')[0] === name);

/** What htmx adds to a form that works without it: one request at a time, the page's main part swapped for the answer. */
export const upgraded = (action: string) => ({
  'hx-post': action,
  'hx-target': '#main',
  'hx-swap': 'outerHTML',
  'hx-encoding': 'multipart/form-data',
  'hx-sync': 'this:drop',
  'hx-disable': 'find button',
  'hx-status:5xx': 'swap:none',
});

function Late({ form }: { readonly form: FormState }) {
  return (
    <details open={!!form.typed.get('occurredAt')?.[0]}>
      <summary>It happened earlier</summary>
      <FieldView name="occurredAt" label="When it happened" optional control={{ kind: 'instant' }} form={form} />
    </details>
  );
}

export type Asks = 'session' | 'pin' | 'password';

/** The PIN or password that is typed again to sign for something; nothing where a session is enough. */
export function Secret({ asks, form }: { readonly asks: Asks; readonly form: Pick<FormState, 'problems'> }) {
  if (asks === 'session') return null;
  return (
    <div class="field">
      <label class="l" for={`f-${asks}`}>
        {asks === 'pin' ? 'Your PIN' : 'Your password'}
      </label>
      <FieldError name={asks} problems={form.problems} />
      <input
        class={asks === 'pin' ? 'text short' : 'text'}
        id={`f-${asks}`}
        name={asks}
        type="password"
        inputmode={asks === 'pin' ? 'numeric' : 'text'}
        autocomplete="off"
      />
    </div>
  );
}
