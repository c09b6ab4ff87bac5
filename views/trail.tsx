// The trail: every entry, newest first, and the check of the log.
import type { LedgerLine } from '../src/web/ledger-lines.ts';
import type { Checked } from '../src/web/trail.ts';
import { Ledger } from './parts/ledger.tsx';

interface Props {
  readonly lines: readonly LedgerLine[];
  readonly older: number | null;
  readonly checked: Checked | null;
  readonly canExport: boolean;
}

export function TrailView({ lines, older, checked, canExport }: Props) {
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
        <div class={checked.whole ? 'written' : 'summary'} role="status">
          <h2>{checked.whole ? 'The log is whole' : 'The log is not whole'}</h2>
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
      <Ledger lines={lines} />
      {older !== null && <a href={`/trail?before=${older}`}>Earlier entries</a>}
    </>
  );
}
