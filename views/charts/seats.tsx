// The seats of a piece drawn in the order they were noted, each in the outline of its stone's cut.
import type { Seat } from '../../src/projections/job-stones.ts';

export interface StoneRow {
  readonly letter: string;
  readonly paper: string;
  readonly seat: string;
  readonly what: string;
  readonly cut: string;
  readonly where: Seat['where'];
  readonly stones: number;
  /** How many of them are out. */
  readonly loose: number;
  readonly events: readonly { readonly seq: number; readonly words: string }[];
  /** What two weights of it say together; null where it was not weighed twice. */
  readonly weights: string | null;
  /** What is most likely to be done with it next. */
  readonly next: readonly [href: string, words: string] | null;
}

/** Whether some of a group are out and some are not. */
export const isInPart = ({ loose, stones }: Pick<StoneRow, 'loose' | 'stones'>): boolean => loose > 0 && loose < stones;

const STEP = 64;
const ACROSS = 10;

/** Seats as they were noted, ten in a row: a full outline is in its seat, a dashed one is out, a cross is empty. */
export function Diagram({ rows }: { readonly rows: readonly StoneRow[] }) {
  const across = Math.min(ACROSS, rows.length);
  const down = Math.ceil(rows.length / ACROSS);
  const words = rows
    .map((row) => `${row.letter} ${row.seat}: ${isInPart(row) ? `${row.loose} of ${row.stones} ` : ''}${row.where}`)
    .join('; ');
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
                {isInPart(row) ? `${row.loose} of ${row.stones}` : `× ${row.stones}`}
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
