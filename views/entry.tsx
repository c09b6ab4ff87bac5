// One entry, read whole: what it says, field by field, who wrote it and when, and where to correct it.
import type { LedgerLine } from './parts/ledger.tsx';

export interface Detail {
  readonly name: string;
  readonly label: string;
  readonly words: string;
  readonly correctable: boolean;
  readonly sealed: boolean;
}

interface Props {
  readonly line: LedgerLine;
  readonly details: readonly Detail[];
  readonly job: { readonly id: string; readonly bag: string } | null;
  /** A weight in it was read on a balance that failed a check before or after. */
  readonly doubted: boolean;
}

export function EntryView({ line, details, job, doubted }: Props) {
  return (
    <>
      <section class="head">
        <p class="soft">
          Entry {line.seq}
          {job && (
            <>
              {' · bag '}
              <a class="mini" href={`/jobs/${job.id}`}>
                {job.bag}
              </a>
            </>
          )}
        </p>
        <h1>{line.said}</h1>
        <p class="soft">
          Written by <b>{line.by}</b>, {line.at}
          {line.late && `; it happened ${line.late}`}
        </p>
        {line.corrects !== null && (
          <p>
            It corrects <a href={`/entries/${line.corrects}`}>entry {line.corrects}</a>.
          </p>
        )}
        {doubted && <p class="again">In doubt: the balance failed a check before or after this weighing. Weigh it again on another.</p>}
        {line.correctedBy.map((seq) => (
          <p class="again">
            Corrected by <a href={`/entries/${seq}`}>entry {seq}</a>; what stands below is what it says now.
          </p>
        ))}
      </section>
      <dl class="facts">
        {details.map(({ name, label, words, correctable, sealed }) => (
          <div>
            <dt>
              {label}
              {sealed && <small> sealed</small>}
            </dt>
            <dd>{words}</dd>
            {correctable && (
              <dd class="do">
                <a href={`/entries/${line.seq}/correct/${name}`}>
                  Correct<span class="sr"> {label}</span>
                </a>
              </dd>
            )}
          </div>
        ))}
      </dl>
      <p class="soft">
        <small>
          Leaf hash <code>{line.hash}</code>
        </small>
      </p>
    </>
  );
}
