// The calculator: the list, and one calculation with its form and what came of it.
import type { Control } from '../src/book/values.ts';
import { ErrorSummary, type Shown } from './parts/errors.tsx';
import { FieldView } from './parts/field.tsx';

export function CalculatorView({
  all,
}: {
  readonly all: readonly { readonly id: string; readonly title: string; readonly asks: string }[];
}) {
  return (
    <>
      <section class="head">
        <h1>Calculator</h1>
        <p class="soft">For planning. What it says is an estimate and is written nowhere; the balance decides.</p>
      </section>
      <ul class="calculations">
        {all.map(({ id, title, asks }) => (
          <li>
            <a href={`/calculator/${id}`}>{title}</a>
            <small>{asks}</small>
          </li>
        ))}
      </ul>
    </>
  );
}

type Choices = readonly (readonly [code: string, words: string])[];
interface Use {
  readonly text: string;
  readonly unit: string;
  readonly formula: string;
  readonly jobs: Choices;
  readonly types: Choices;
}
interface Result {
  readonly rows: readonly (readonly [words: string, value: string])[];
  /** A stable id of the formula and its version. */
  readonly formula: string;
  readonly note?: string;
}
interface Props {
  readonly title: string;
  readonly asks: string;
  readonly fields: readonly {
    readonly name: string;
    readonly label: string;
    readonly hint?: string | undefined;
    readonly optional: boolean;
    readonly control: Control;
  }[];
  readonly typed: ReadonlyMap<string, readonly string[]>;
  readonly problems: readonly Shown[];
  readonly result: Result | null;
  readonly sources: readonly string[];
  readonly use: Use | null;
}

export function CalculationView({ title, asks, fields, typed, problems, result, sources, use }: Props) {
  const form = { typed, problems, balances: [], tares: [], things: {} };
  return (
    <>
      <ErrorSummary problems={problems} title="Not calculated yet" />
      <section class="head">
        <p class="soft">
          <a href="/calculator">Calculator</a>
        </p>
        <h1>{title}</h1>
        <p class="soft">{asks}</p>
      </section>
      {result && <ResultView result={result} sources={sources} />}
      {use && use.jobs.length > 0 && <UseIt use={use} />}
      <form class="sheet" method="get" novalidate>
        {fields.map((field) => (
          <FieldView {...field} form={form} />
        ))}
        <div class="act wide">
          <button>Calculate</button>
        </div>
      </form>
    </>
  );
}

function ResultView({ result, sources }: { readonly result: Result; readonly sources: readonly string[] }) {
  return (
    <section class="result" role="status">
      <dl>
        {result.rows.map(([words, value]) => (
          <div>
            <dt>{words}</dt>
            <dd>{value}</dd>
          </div>
        ))}
      </dl>
      {result.note && <p>{result.note}</p>}
      <small>
        Formula <code>{result.formula}</code>
      </small>
      <details>
        <summary>Where it was read</summary>
        <ul>
          {sources.map((source) => (
            <li>
              <small>{source}</small>
            </li>
          ))}
        </ul>
      </details>
    </section>
  );
}

/** The result on its way into the weight of an entry, as an estimate that names its formula. */
function UseIt({ use }: { readonly use: Use }) {
  return (
    <details class="use">
      <summary>
        Use {use.text} {use.unit} in an entry
      </summary>
      <form method="get" action="/calculator/use">
        {(['text', 'unit', 'formula'] as const).map((name) => (
          <input type="hidden" name={name} value={use[name]} />
        ))}
        <Pick name="job" label="Bag" choices={use.jobs} />
        <Pick name="type" label="Entry" choices={use.types} />
        <button>Go to the form</button>
      </form>
    </details>
  );
}

function Pick({ name, label, choices }: { readonly name: string; readonly label: string; readonly choices: Choices }) {
  return (
    <label>
      {label}
      <select class="text" name={name}>
        {choices.map(([code, words]) => (
          <option value={code}>{words}</option>
        ))}
      </select>
    </label>
  );
}
