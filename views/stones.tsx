// The stones of a job: the seats drawn in a row, and each with its paper and what was done to it.
import { Diagram, isInPart, type StoneRow } from './charts/seats.tsx';

interface Props {
  readonly job: string;
  readonly bag: string;
  readonly rows: readonly StoneRow[];
  readonly counted: string;
  readonly trouble: readonly { readonly seq: number; readonly say: string }[];
  /** Which papers weight could not sort out again; null where fewer than two stones that were weighed are out. */
  readonly papers: string | null;
  /** Entries that may be written on them: none where the job is done or the reader only reads. */
  readonly doing: readonly (readonly [href: string, words: string])[];
}

export function StonesView({ job, bag, rows, counted, trouble, papers, doing }: Props) {
  return (
    <>
      <section class="head">
        <p class="soft">
          Bag{' '}
          <a class="mini" href={`/jobs/${job}`}>
            {bag}
          </a>
        </p>
        <h1>Stones</h1>
        <p class="sentence">{counted}</p>
        {trouble.map(({ seq, say }) => (
          <p class="off-words" role="alert">
            <b>The count does not agree.</b> {say} <a href={`/entries/${seq}`}>Entry {seq}</a>
          </p>
        ))}
      </section>
      <div class="stones">
        <section aria-labelledby="seats">
          <h2 id="seats">Seat by seat</h2>
          {rows.length === 0 ? (
            <p class="soft">No seats are noted yet. Note the first setting, from the middle outwards.</p>
          ) : (
            <List rows={rows} />
          )}
          {papers && <p>{papers}</p>}
        </section>
        {rows.length > 0 && <Diagram rows={rows} />}
      </div>
      <ul class="links">
        {doing.map(([href, words]) => (
          <li>
            <a href={href}>{words}</a>
          </li>
        ))}
      </ul>
    </>
  );
}

function List({ rows }: { readonly rows: readonly StoneRow[] }) {
  return (
    <ol class="ledger">
      {rows.map((row) => (
        <li>
          <b>
            {row.letter && `${row.letter} · `}
            {row.seat || 'seat not noted'}: {row.what}
          </b>
          <span class="num where">
            {row.where === 'out' ? `${isInPart(row) ? `${row.loose} of ${row.stones} ` : ''}out, in paper ${row.paper}` : row.where}
          </span>
          <small>
            {row.events.map(({ seq, words }, index) => (
              <>
                {index > 0 && ' · '}
                {words} <a href={`/entries/${seq}`}>{seq}</a>
              </>
            ))}
          </small>
          {row.weights && <small>{row.weights}</small>}
          {row.next && (
            <a class="do" href={row.next[0]}>
              {row.next[1]}
              <span class="sr"> ({row.seat})</span>
            </a>
          )}
        </li>
      ))}
    </ol>
  );
}
