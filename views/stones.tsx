// The stones of a job: the seats drawn in a row, and each with its paper and what was done to it.
import type { StoneRow } from '../src/web/stones.ts';

interface Props {
  readonly job: string;
  readonly bag: string;
  readonly rows: readonly StoneRow[];
  readonly counted: string;
  readonly trouble: readonly { readonly seq: number; readonly say: string }[];
  readonly open: boolean;
}

export function StonesView({ job, bag, rows, counted, trouble, open }: Props) {
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
        </section>
        {rows.length > 0 && <Diagram rows={rows} />}
      </div>
      {open && (
        <ul class="links">
          {DOING.map(([type, words]) => (
            <li>
              <a href={`/jobs/${job}/write/${type}`}>{words}</a>
            </li>
          ))}
        </ul>
      )}
    </>
  );
}

const DOING = [
  ['setting_noted', 'Note a seat'],
  ['stone_unset', 'Take stones out and paper them'],
  ['stone_weighed', 'Weigh loose stones'],
  ['stone_set', 'Set stones'],
  ['piece_checked', 'Count the piece'],
] as const;

function List({ rows }: { readonly rows: readonly StoneRow[] }) {
  return (
    <ol class="ledger">
      {rows.map((row) => (
        <li>
          <b>
            {row.letter && `${row.letter} · `}
            {row.seat || 'seat not noted'}: {row.what}
          </b>
          <span class="num where">{row.where === 'out' ? `out, in paper ${row.paper}` : row.where}</span>
          <small>
            {row.events.map(({ seq, words }, index) => (
              <>
                {index > 0 && ' · '}
                {words} <a href={`/entries/${seq}`}>{seq}</a>
              </>
            ))}
          </small>
          {row.next && (
            <a href={row.next[0]}>
              {row.next[1]}
              <span class="sr"> ({row.seat})</span>
            </a>
          )}
        </li>
      ))}
    </ol>
  );
}

const STEP = 64;
const ACROSS = 10;

/** Seats as they were noted, ten in a row: a full outline is in its seat, a dashed one is out, a cross is empty. */
function Diagram({ rows }: { readonly rows: readonly StoneRow[] }) {
  const across = Math.min(ACROSS, rows.length);
  const down = Math.ceil(rows.length / ACROSS);
  const words = rows.map(({ letter, seat, where }) => `${letter} ${seat}: ${where}`).join('; ');
  return (
    <figure class="seats">
      <svg viewBox={`0 0 ${across * STEP} ${down * (STEP + 24)}`} role="img" aria-label={`Seats as noted. ${words}`}>
        {rows.map((row, n) => (
          <g
            class={SHAPED[row.where]}
            transform={`translate(${(n % ACROSS) * STEP + STEP / 2} ${Math.floor(n / ACROSS) * (STEP + 24) + STEP / 2})`}
          >
            <Outline cut={row.cut} />
            {row.where === 'empty' ? <path class="cross" d="M-10 -10L10 10M10 -10L-10 10" /> : <text y="6">{row.letter}</text>}
            {row.stones > 1 && (
              <text class="group" y="42">
                {`× ${row.stones}`}
              </text>
            )}
          </g>
        ))}
      </svg>
      <figcaption>
        <small>In the order they were noted. Full line: in its seat. Dashed: out. Cross: empty seat.</small>
      </figcaption>
    </figure>
  );
}

const SHAPED: Readonly<Record<StoneRow['where'], string>> = {
  'in the piece': 'in',
  set: 'in set',
  out: 'out',
  empty: 'out',
  'gone home': 'out',
};

/** The outline of a cut as a plan view shows it. */
function Outline({ cut }: { readonly cut: string }) {
  switch (cut) {
    case 'step':
      return <path d="M-14 -22H14L22 -14V14L14 22H-14L-22 14V-14Z" />;
    case 'princess':
      return <rect x="-20" y="-20" width="40" height="40" />;
    case 'baguette':
      return <rect x="-12" y="-24" width="24" height="48" />;
    case 'oval':
      return <ellipse rx="18" ry="24" />;
    case 'cushion':
      return <rect x="-21" y="-21" width="42" height="42" rx="12" />;
    case 'marquise':
      return <path d="M0 -26Q30 0 0 26Q-30 0 0 -26Z" />;
    case 'pear':
      return <path d="M0 -26Q22 0 19 11A19 19 0 0 1 -19 11Q-22 0 0 -26Z" />;
    default:
      return <circle r="22" />;
  }
}
