// One form for any entry or sheet: the summary of what is wrong, its fields in order, its cautions, the PIN where it is asked for.
import type { Child } from 'hono/jsx';
import type { Control } from '../src/book/values.ts';
import { ErrorSummary, FieldError } from './parts/errors.tsx';
import { FieldView, type FormState } from './parts/field.tsx';

export interface FormPage {
  readonly title: string;
  readonly action: string;
  readonly button: string;
  readonly fields: readonly {
    readonly name: string;
    readonly label: string;
    readonly hint?: string | undefined;
    readonly optional: boolean;
    readonly control: Control;
  }[];
  readonly form: FormState;
  readonly hidden: readonly (readonly [string, string])[];
  readonly cautions: readonly string[];
  readonly pin: boolean;
  /** Entries somebody else wrote while this was typed. */
  readonly since: readonly number[];
  /** Asks when it happened, for what is written afterwards. */
  readonly late: boolean;
  readonly above?: Child;
}

export function EntryForm(page: FormPage) {
  const { form } = page;
  return (
    <>
      <ErrorSummary problems={form.problems} />
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
        data-form={page.hidden.find(([name]) => name === 'form')?.[1]}
        {...upgraded(page.action)}
      >
        {page.hidden.map(([name, value]) => (
          <input type="hidden" name={name} value={value} />
        ))}
        {page.fields.map((field) => (
          <FieldView {...field} form={form} />
        ))}
        <Cautions cautions={page.cautions} />
        {page.late && <Late form={form} />}
        {page.pin && <Pin form={form} />}
        <div class="act wide">
          <button>{page.button}</button>
        </div>
      </form>
    </>
  );
}

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

function Since({ since }: { readonly since: readonly number[] }) {
  return (
    <div class="again" role="alert">
      <b>Somebody wrote on this job while you typed.</b> What you typed is kept below. Look at{' '}
      {since.map((seq) => (
        <>
          <a href={`/entries/${seq}`}>entry {seq}</a>{' '}
        </>
      ))}
      and send it again if it still holds.
    </div>
  );
}

function Cautions({ cautions }: { readonly cautions: readonly string[] }) {
  if (cautions.length === 0) return null;
  return (
    <aside class="cautions wide" aria-label="Usual cautions">
      <b>Usual cautions</b>
      <ul>
        {cautions.map((caution) => (
          <li>{caution}</li>
        ))}
      </ul>
      <small>Follow the safety data sheet, your local code and a licensed practitioner.</small>
    </aside>
  );
}

function Late({ form }: { readonly form: FormState }) {
  return (
    <details class="wide" open={!!form.typed.get('occurredAt')?.[0]}>
      <summary>It happened earlier</summary>
      <FieldView name="occurredAt" label="When it happened" optional control={{ kind: 'instant' }} form={form} />
    </details>
  );
}

export function Pin({ form }: { readonly form: FormState }) {
  return (
    <div class="field">
      <label class="l" for="f-pin">
        Your PIN
      </label>
      <FieldError name="pin" problems={form.problems} />
      <input class="text" id="f-pin" name="pin" type="password" inputmode="numeric" autocomplete="off" />
    </div>
  );
}
