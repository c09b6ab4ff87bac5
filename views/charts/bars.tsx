// A row of bars on one scale, each with its words and figure above it: what came in, what was added and taken off, what is left over.
export interface Bar {
  readonly words: string;
  readonly value: string;
  /** Where the bar begins and ends on the scale. */
  readonly from: number;
  readonly to: number;
  /** A total, something in, something out, what is reckoned rather than weighed, and what does not agree. */
  readonly kind: 'total' | 'in' | 'out' | 'reckoned' | 'off';
  /** Half-width of what the balance can tell, drawn as a whisker at `to`. */
  readonly give?: number;
}

const [WIDTH, ROW, THICK] = [480, 46, 16];
const PATTERN = { total: null, in: null, out: 'hatch', reckoned: 'dots', off: 'cross' } as const;

/** Bars one under another in the order given; `title` is read out in place of the picture. */
export function Bars({ title, bars }: { readonly title: string; readonly bars: readonly Bar[] }) {
  const most = Math.max(1e-9, ...bars.flatMap(({ from, to, give = 0 }) => [from, to + give]));
  const x = (value: number) => (Math.max(0, value) / most) * (WIDTH - 4) + 2;
  return (
    <svg class="chart bars" viewBox={`0 0 ${WIDTH} ${bars.length * ROW}`} role="img" aria-label={title}>
      <title>{title}</title>
      <Patterns />
      {bars.map((bar, row) => (
        <g transform={`translate(0 ${row * ROW})`}>
          <text x="2" y="17">
            {bar.words}
          </text>
          <text x={WIDTH - 2} y="17" text-anchor="end" class="value">
            {bar.value}
          </text>
          <BarShape bar={bar} x={x} />
        </g>
      ))}
    </svg>
  );
}

function BarShape({ bar: { from, to, kind, give }, x }: { readonly bar: Bar; readonly x: (value: number) => number }) {
  const [left, right] = [x(Math.min(from, to)), x(Math.max(from, to))];
  const shape = { x: left, y: 23, width: Math.max(1.5, right - left), height: THICK };
  const pattern = PATTERN[kind];
  return (
    <>
      <rect {...shape} class={`bar ${kind}`} />
      {pattern && <rect {...shape} fill={`url(#${pattern})`} />}
      {give !== undefined && <path class="whisker" d={`M${x(to - give)} 31H${x(to + give)}M${x(to - give)} 25v12M${x(to + give)} 25v12`} />}
    </>
  );
}

/** Hatching, dots and crosses in the colour of the paper, so that no bar is told by its colour alone. */
export function Patterns() {
  return (
    <defs>
      <pattern id="hatch" width="7" height="7" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
        <path class="grain" d="M0 0V7" />
      </pattern>
      <pattern id="dots" width="6" height="6" patternUnits="userSpaceOnUse">
        <circle class="grain-dot" cx="3" cy="3" r="1.3" />
      </pattern>
      <pattern id="cross" width="7" height="7" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
        <path class="grain" d="M0 0V7M0 3.5H7" />
      </pattern>
    </defs>
  );
}
