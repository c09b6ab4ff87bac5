// Photographs of an invented shop are drawn: a piece on the pan of a balance, its stones, and the reading below it.
import sharp from 'sharp';

/** What is drawn. `reading` is shown in the balance's figures: "4.58". */
export interface Picture {
  readonly of: 'ring' | 'brooch' | 'chain' | 'paper';
  readonly metal: 'yellow' | 'white' | 'silver';
  readonly stones?: readonly Stone[];
  readonly reading?: string;
}
export type Stone = 'clear' | 'blue' | 'red' | 'green' | 'pearl' | 'empty';

type Colour = readonly [red: number, green: number, blue: number];
/** Is this point inside, in units of the picture's height, and how bright is it there? null outside. */
type Shape = (x: number, y: number) => Colour | null;

const [WIDTH, HEIGHT] = [960, 720];
const METAL: Readonly<Record<Picture['metal'], Colour>> = { yellow: [212, 168, 74], white: [196, 198, 202], silver: [206, 208, 206] };
const STONE: Readonly<Record<Stone, Colour>> = {
  clear: [226, 236, 242],
  blue: [44, 72, 150],
  red: [158, 26, 52],
  green: [30, 120, 84],
  pearl: [238, 230, 216],
  empty: [60, 50, 40],
};

/** A PNG of the picture. */
export function drawn(picture: Picture): Promise<Buffer> {
  const shapes = [pan, ...pieceOf(picture), ...figures(picture.reading ?? '')].reverse();
  const pixels = new Uint8Array(WIDTH * HEIGHT * 3);
  for (let row = 0; row < HEIGHT; row++) {
    for (let column = 0; column < WIDTH; column++) {
      const [x, y] = [(column - WIDTH / 2) / HEIGHT, row / HEIGHT - 0.5];
      pixels.set(seen(shapes, x, y), (row * WIDTH + column) * 3);
    }
  }
  return sharp(pixels, { raw: { width: WIDTH, height: HEIGHT, channels: 3 } })
    .png()
    .toBuffer();
}

function seen(shapes: readonly Shape[], x: number, y: number): Colour {
  for (const shape of shapes) {
    const colour = shape(x, y);
    if (colour) return colour;
  }
  return lit([92, 84, 76], 0.85 - 0.25 * Math.hypot(x, y));
}

const lit = ([red, green, blue]: Colour, by: number): Colour =>
  [red, green, blue].map((one) => Math.max(0, Math.min(255, one * by))) as never;

const disc =
  (cx: number, cy: number, radius: number, colour: Colour): Shape =>
  (x, y) => {
    const away = Math.hypot(x - cx, y - cy) / radius;
    const light = 1.15 - (0.5 * Math.hypot(x - cx + radius * 0.4, y - cy + radius * 0.4)) / radius;
    return away > 1 ? null : lit(colour, light);
  };

const band =
  (cx: number, cy: number, radius: number, width: number, colour: Colour): Shape =>
  (x, y) => {
    const off = (Math.hypot(x - cx, y - cy) - radius) / width;
    return Math.abs(off) > 1 ? null : lit(colour, 1.15 - 0.45 * Math.abs(off + 0.4) - 0.12 * (x - cx + y - cy));
  };

const pan: Shape = (x, y) => disc(0, -0.06, 0.4, [188, 190, 192])(x, y);

function pieceOf({ of, metal, stones = [] }: Picture): readonly Shape[] {
  const colour = METAL[metal];
  switch (of) {
    case 'ring':
      return [band(0, -0.02, 0.2, 0.026, colour), ...row(stones, -0.22, 0.075, colour)];
    case 'brooch':
      return [disc(0, -0.06, 0.2, lit(colour, 0.8)), ...around(stones, colour)];
    case 'chain':
      return Array.from({ length: 26 }, (_, link) => {
        const turn = (link / 26) * 2 * Math.PI;
        return band(0.24 * Math.cos(turn), -0.06 + 0.2 * Math.sin(turn), 0.022, 0.007, colour);
      });
    case 'paper':
      return [
        (x, y) => (Math.abs(x) < 0.28 && Math.abs(y + 0.06) < 0.2 ? [244, 242, 234] : null),
        ...row(stones, -0.06, 0.06, [244, 242, 234]),
      ];
  }
}

const set = (stone: Stone, x: number, y: number, radius: number, colour: Colour): readonly Shape[] => [
  disc(x, y, radius, lit(colour, 0.9)),
  disc(x, y, radius * 0.8, STONE[stone]),
];

const row = (stones: readonly Stone[], y: number, pitch: number, colour: Colour): readonly Shape[] =>
  stones.flatMap((stone, i) => set(stone, (i - (stones.length - 1) / 2) * pitch, y, pitch * 0.52, colour));

/** One stone in the middle, the others around it. */
const around = ([middle, ...others]: readonly Stone[], colour: Colour): readonly Shape[] => [
  ...others.flatMap((stone, i) => {
    const turn = (i / others.length) * 2 * Math.PI;
    return set(stone, 0.135 * Math.cos(turn), -0.06 + 0.135 * Math.sin(turn), 0.042, colour);
  }),
  ...(middle ? set(middle, 0, -0.06, 0.075, colour) : []),
];

/** Bars of a figure: top, upper left, upper right, middle, lower left, lower right, bottom. */
const BARS: Readonly<Record<string, string>> = {
  ...{ 0: '1110111', 1: '0010010', 2: '1011101', 3: '1011011', 4: '0111010' },
  ...{ 5: '1101011', 6: '1101111', 7: '1010010', 8: '1111111', 9: '1111011' },
};
const BAR_AT: readonly (readonly [x: number, y: number, across: boolean])[] = [
  ...([
    [0, -1, true],
    [-0.5, -0.5, false],
    [0.5, -0.5, false],
    [0, 0, true],
  ] as const),
  ...([
    [-0.5, 0.5, false],
    [0.5, 0.5, false],
    [0, 1, true],
  ] as const),
];
const INK: Colour = [24, 34, 26];

/** The display under the pan. */
function figures(reading: string): readonly Shape[] {
  if (reading === '') return [];
  const face: Shape = (x, y) => (Math.abs(x) < 0.2 && Math.abs(y - 0.41) < 0.07 ? [176, 194, 168] : null);
  let x = -0.024 * reading.length;
  const bars = [...reading].flatMap((figure) => {
    const shapes = figure === '.' ? [dot(x - 0.014)] : figureAt(x + 0.012, BARS[figure] ?? '');
    x += figure === '.' ? 0.014 : 0.056;
    return shapes;
  });
  return [face, ...bars];
}

const dot =
  (cx: number): Shape =>
  (x, y) =>
    Math.abs(x - cx) < 0.005 && Math.abs(y - 0.447) < 0.005 ? INK : null;

const figureAt = (cx: number, bars: string): readonly Shape[] =>
  BAR_AT.filter((_, i) => bars[i] === '1').map(([bx, by, across]) => {
    const [halfX, halfY] = across ? [0.014, 0.0045] : [0.0045, 0.0165];
    return (x, y) => (Math.abs(x - cx - bx * 0.034) < halfX && Math.abs(y - 0.41 - by * 0.036) < halfY ? INK : null);
  });
