// "Whose is this?": the form for what has no label, and what it could be, by weight.
import type { Control } from '../src/book/values.ts';
import { ErrorSummary } from './parts/errors.tsx';
import { FieldView, type FormState } from './parts/field.tsx';
import { Tag } from './parts/tag.tsx';

/** A thing that is here, with what it should weigh. */
export interface WhoseLine {
  readonly job: string;
  readonly bag: string;
  readonly metal: string;
  readonly what: string;
  readonly weighs: string;
}
interface Props {
  readonly answer: {
    readonly said: readonly string[];
    readonly could: readonly WhoseLine[];
    readonly unknown: readonly WhoseLine[];
    readonly cannot: readonly WhoseLine[];
    readonly otherSize: readonly WhoseLine[];
  } | null;
  readonly fields: readonly { readonly name: string; readonly label: string; readonly optional: boolean; readonly control: Control }[];
  readonly form: FormState;
}

export function WhoseView({ answer, fields, form }: Props) {
  return (
    <>
      <ErrorSummary problems={form.problems} title="Not looked up yet" />
      <section class="head">
        <h1>Whose is this?</h1>
        <p class="soft">Weigh a piece or a stone that has no label: it is held against what is here. Nothing is written.</p>
      </section>
      {answer && (
        <section class="result" role="status">
          {answer.said.map((say) => (
            <p>{say}</p>
          ))}
        </section>
      )}
      {answer && (
        <>
          <Lines title="Could be, by weight" lines={answer.could} />
          <Lines title="Not weighed by itself, so it could be" lines={answer.unknown} />
          <Lines title="Cannot be, by weight" lines={answer.cannot} />
          <Lines title="Measures otherwise" lines={answer.otherSize} />
        </>
      )}
      <form class="sheet" method="get" action="/whose" novalidate>
        {fields.map((field) => (
          <FieldView {...field} form={form} />
        ))}
        <div class="act wide">
          <button>Look</button>
        </div>
      </form>
    </>
  );
}

function Lines({ title, lines }: { readonly title: string; readonly lines: readonly WhoseLine[] }) {
  if (lines.length === 0) return null;
  return (
    <section class="block">
      <h2>{title}</h2>
      <ul class="jobs">
        {lines.map(({ job, bag, metal, what, weighs }) => (
          <li>
            <Tag code={bag} metal={metal} href={`/jobs/${job}`} />
            <div>
              <b>{what}</b>
              <small>{weighs}</small>
            </div>
          </li>
        ))}
      </ul>
    </section>
  );
}
