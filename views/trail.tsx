// The trail: every entry, newest first, and the check of the log.
import { Ledger, type LedgerLine } from './parts/ledger.tsx';

export interface Checked {
  /** Null while it is still being looked at. */
  readonly whole: boolean | null;
  /** When the check ended, in words. */
  readonly at?: string;
  readonly say: string;
  readonly seq?: number | null;
  readonly root?: string;
}

interface Props {
  readonly lines: readonly LedgerLine[];
  /** Where the entries before these are. */
  readonly older: string | null;
  readonly checked: Checked | null;
  /** What no check can show, in sentences. */
  readonly unseen: readonly string[];
  readonly only: { readonly by: string; readonly type: string };
  readonly people: Options;
  readonly types: Options;
  readonly canExport: boolean;
}
type Options = readonly (readonly [value: string, words: string])[];

export function TrailView({ lines, older, checked, unseen, only, people, types, canExport }: Props) {
  return (
    <>
      <section class="head">
        <h1>Trail</h1>
        <p class="soft">Every entry as it was written. Nothing here is edited or deleted; a correction is a further entry.</p>
        <form method="post" action="/trail/check">
          <button>Check the log</button>
        </form>
        {canExport && <a href="/export.jsonl">Download every entry (JSON Lines)</a>}
      </section>
      {checked && (
        <div class={checked.whole === false ? 'summary' : 'written'} role="status">
          <h2>{checked.whole === null ? 'The log is being checked' : checked.whole ? 'The log is whole' : 'The log is not whole'}</h2>
          {checked.at !== undefined && <p class="soft">As of {checked.at}.</p>}
          <p>{checked.say}</p>
          {checked.root && (
            <p>
              <small>
                Root <code>{checked.root}</code>
              </small>
            </p>
          )}
        </div>
      )}
      <details>
        <summary>What the check cannot show</summary>
        <ul>
          {unseen.map((sentence) => (
            <li>{sentence}</li>
          ))}
        </ul>
      </details>
      <form class="only" method="get" action="/trail">
        <Only name="by" label="Written by" all="anybody" options={people} chosen={only.by} />
        <Only name="type" label="Kind of entry" all="any" options={types} chosen={only.type} />
        <button>Show these</button>
      </form>
      {lines.length === 0 ? <p class="soft">No entry is like that.</p> : <Ledger lines={lines} />}
      {older !== null && <a href={older}>Earlier entries</a>}
    </>
  );
}

interface OnlyProps {
  readonly name: string;
  readonly label: string;
  readonly all: string;
  readonly options: Options;
  readonly chosen: string;
}

function Only({ name, label, all, options, chosen }: OnlyProps) {
  return (
    <p>
      <label class="l" for={`only-${name}`}>
        {label}
      </label>
      <select class="text" id={`only-${name}`} name={name}>
        <option value="">{all}</option>
        {options.map(([value, words]) => (
          <option value={value} selected={value === chosen}>
            {words}
          </option>
        ))}
      </select>
    </p>
  );
}
