// Points in their order on one scale with limits and words beside them: losses job by job, or the running sums of their scores.
export interface RunPoint {
  readonly value: number;
  /** A second series, drawn as a dashed run without points: the gain side of a running sum. */
  readonly other?: number;
  readonly words: string;
  readonly href: string;
  readonly leftOut?: boolean;
}
interface Props {
  readonly title: string;
  readonly points: readonly RunPoint[];
  readonly lines: readonly { readonly at: number; readonly words: string; readonly isLimit: boolean }[];
}

const [WIDTH, HEIGHT, LEFT, RIGHT, TOP, BOTTOM] = [720, 240, 8, 150, 16, 24];

/** A run of points; each opens its job. The picture's title says what it shows, the table beside it says the figures. */
export function Run({ title, points, lines }: Props) {
  const values = [
    ...points.filter(({ leftOut }) => !leftOut).flatMap(({ value, other }) => [value, other ?? value]),
    ...lines.map(({ at }) => at),
    0,
  ];
  const [low, high] = [Math.min(...values), Math.max(...values)];
  // A point that was left out must not flatten the others: it sits at the edge of the scale.
  const y = (value: number) => TOP + (HEIGHT - TOP - BOTTOM) * (1 - (Math.min(high, Math.max(low, value)) - low) / (high - low || 1));
  const x = (index: number) => LEFT + ((WIDTH - LEFT - RIGHT) * (index + 0.5)) / Math.max(1, points.length);
  const path = (of: (point: RunPoint) => number) =>
    points.map((point, i) => `${i === 0 ? 'M' : 'L'}${x(i).toFixed(1)} ${y(of(point)).toFixed(1)}`).join('');
  const end = WIDTH - RIGHT;
  return (
    <svg class="chart wide" viewBox={`0 0 ${WIDTH} ${HEIGHT}`} role="group" aria-label={title}>
      <title>{title}</title>
      <path class="axis" d={`M${LEFT} ${y(0)}H${end}`} />
      {lines.map(({ at, words, isLimit }) => (
        <>
          <path class={isLimit ? 'limit' : 'usual'} d={`M${LEFT} ${y(at)}H${end}`} />
          <text class="axis-words" x={end + 8} y={y(at) - 2}>
            {words}
          </text>
        </>
      ))}
      <text class="axis-words" x={end + 8} y={y(0) + 16}>
        nothing
      </text>
      <path class="run" d={path(({ value }) => value)} />
      {points.some(({ other }) => other !== undefined) && <path class="run" stroke-dasharray="3 4" d={path(({ other }) => other ?? 0)} />}
      {points.map(({ value, words, href, leftOut }, i) => (
        <a href={href} aria-label={words}>
          <circle class={leftOut ? 'point left-out' : 'point'} cx={x(i)} cy={y(value)} r="6">
            <title>{words}</title>
          </circle>
        </a>
      ))}
    </svg>
  );
}
