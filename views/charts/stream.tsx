// Metal from layer to layer, from the top down: each holding as wide as what passes through it, each flow a band between two of them.
import { Patterns } from './bars.tsx';

export interface Band {
  readonly from: string;
  readonly to: string;
  readonly value: number;
  readonly words: string;
  readonly isReckoned: boolean;
}
interface Props {
  readonly title: string;
  readonly layers: readonly (readonly { readonly id: string; readonly words: string }[])[];
  readonly bands: readonly Band[];
}
interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
}

const [WIDTH, LAYER, THICK, GAP, LEAST] = [480, 92, 12, 16, 3];

/** The picture of a period's metal; the table beside it gives the figures. */
export function Stream({ title, layers, bands }: Props) {
  const scale = scaleFor(layers, bands);
  const boxes = boxesOf(layers, bands, scale);
  const out = new Map<string, number>();
  const into = new Map<string, number>();
  return (
    <svg class="chart" viewBox={`0 0 ${WIDTH} ${(layers.length - 1) * LAYER + 24 + THICK}`} role="img" aria-label={title}>
      <title>{title}</title>
      <Patterns />
      {bands.map((band) => {
        const d = ribbon(band, boxes, scale, out, into);
        return (
          <>
            <path class={band.isReckoned ? 'link reckoned' : 'link'} d={d}>
              <title>{band.words}</title>
            </path>
            {band.isReckoned && <path d={d} fill="url(#dots)" />}
          </>
        );
      })}
      {layers
        .flatMap((layer) => layer.map((holding, at) => ({ ...holding, isLow: layer.length > 2 && at % 2 === 1 })))
        .map(({ id, words, isLow }) => {
          const box = boxes.get(id);
          return (
            box && (
              <>
                <rect class="holding" x={box.x} y={box.y} width={box.width} height={THICK} />
                <text x={Math.min(box.x, WIDTH - 8 * words.length)} y={isLow ? box.y + THICK + 16 : box.y - 6}>
                  {words}
                </text>
              </>
            )
          );
        })}
    </svg>
  );
}

const through = (id: string, bands: readonly Band[]): number => {
  const sum = (side: 'from' | 'to') => bands.filter((band) => band[side] === id).reduce((total, { value }) => total + value, 0);
  return Math.max(sum('from'), sum('to'));
};

/** Units of width to a gram, so that the widest layer fits. */
function scaleFor(layers: Props['layers'], bands: readonly Band[]): number {
  const room = layers.map(
    (layer) =>
      (WIDTH - GAP * (layer.length - 1)) /
      Math.max(
        1e-9,
        layer.reduce((sum, { id }) => sum + through(id, bands), 0),
      ),
  );
  return Math.min(...room, Number.MAX_VALUE);
}

function boxesOf(layers: Props['layers'], bands: readonly Band[], scale: number): ReadonlyMap<string, Box> {
  const boxes = new Map<string, Box>();
  for (const [row, layer] of layers.entries()) {
    const room = (WIDTH - GAP * (layer.length - 1)) / Math.max(1, layer.length);
    for (const [i, { id }] of layer.entries()) {
      const width = Math.max(LEAST, scale * through(id, bands));
      boxes.set(id, { x: Math.min(i * (room + GAP), WIDTH - width), y: row * LAYER + 24, width });
    }
  }
  return boxes;
}

/** A band between two boxes, beside those drawn before it. */
function ribbon(
  { from, to, value }: Band,
  boxes: ReadonlyMap<string, Box>,
  scale: number,
  out: Map<string, number>,
  into: Map<string, number>,
): string {
  const [a, b] = [boxes.get(from), boxes.get(to)];
  if (!a || !b) return '';
  const width = Math.max(LEAST, scale * value);
  const [x1, x2] = [a.x + (out.get(from) ?? 0), b.x + (into.get(to) ?? 0)];
  out.set(from, (out.get(from) ?? 0) + width);
  into.set(to, (into.get(to) ?? 0) + width);
  const [y1, y2] = [a.y + THICK, b.y];
  const bend = (y1 + y2) / 2;
  return `M${x1} ${y1}C${x1} ${bend} ${x2} ${bend} ${x2} ${y2}H${x2 + width}C${x2 + width} ${bend} ${x1 + width} ${bend} ${x1 + width} ${y1}z`;
}
