// Photographs of an invented shop are drawn: a piece on the pan of a balance, its stones, and the reading below it.
import sharp from 'sharp';

/** What is drawn. `reading` is shown in the balance's figures: "4.58". */
export interface Picture {
  readonly of: 'ring' | 'full hoop' | 'brooch' | 'chain' | 'paper';
  readonly metal: 'yellow' | 'white' | 'silver';
  readonly stones?: readonly Stone[];
  readonly reading?: string;
}
export type Stone = 'clear' | 'blue' | 'red' | 'green' | 'pearl' | 'empty';

type Colour = readonly [red: number, green: number, blue: number];
/** Painted within `half` of its middle, in units of the picture's height; null leaves what is below. */
interface Shape {
  readonly middle: readonly [x: number, y: number];
  readonly half: readonly [x: number, y: number];
  readonly at: (x: number, y: number) => Colour | null;
}

const [WIDTH, HEIGHT] = [720, 540];
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
  const pixels = new Uint8Array(WIDTH * HEIGHT * 3);
  for (const shape of [CLOTH, PAN, ...pieceOf(picture), ...figures(picture.reading ?? '')]) paint(pixels, shape);
  return sharp(pixels, { raw: { width: WIDTH, height: HEIGHT, channels: 3 } })
    .png()
    .toBuffer();
}

function paint(pixels: Uint8Array, { middle, half, at }: Shape): void {
  const column = (x: number) => Math.min(WIDTH, Math.max(0, Math.ceil(x * HEIGHT + WIDTH / 2)));
  const row = (y: number) => Math.min(HEIGHT, Math.max(0, Math.ceil((y + 0.5) * HEIGHT)));
  for (let r = row(middle[1] - half[1]); r < row(middle[1] + half[1]); r++) {
    for (let c = column(middle[0] - half[0]); c < column(middle[0] + half[0]); c++) {
      const colour = at((c - WIDTH / 2) / HEIGHT, r / HEIGHT - 0.5);
      if (colour) pixels.set(colour, (r * WIDTH + c) * 3);
    }
  }
}

function lit([red, green, blue]: Colour, by: number): Colour {
  const within = (one: number) => Math.max(0, Math.min(255, one * by));
  return [within(red), within(green), within(blue)];
}

const disc = (cx: number, cy: number, radius: number, colour: Colour): Shape => ({
  middle: [cx, cy],
  half: [radius, radius],
  at: (x, y) =>
    Math.hypot(x - cx, y - cy) > radius
      ? null
      : lit(colour, 1.15 - (0.5 * Math.hypot(x - cx + radius * 0.4, y - cy + radius * 0.4)) / radius),
});

const band = (cx: number, cy: number, radius: number, width: number, colour: Colour): Shape => ({
  middle: [cx, cy],
  half: [radius + width, radius + width],
  at(x, y) {
    const off = (Math.hypot(x - cx, y - cy) - radius) / width;
    return Math.abs(off) > 1 ? null : lit(colour, 1.15 - 0.45 * Math.abs(off + 0.4) - 0.12 * (x - cx + y - cy));
  },
});

const block = (cx: number, cy: number, halfX: number, halfY: number, colour: Colour): Shape => ({
  middle: [cx, cy],
  half: [halfX, halfY],
  at: () => colour,
});

const CLOTH: Shape = { middle: [0, 0], half: [1, 1], at: (x, y) => lit([92, 84, 76], 0.85 - 0.25 * Math.hypot(x, y)) };
const PAN = disc(0, -0.06, 0.4, [188, 190, 192]);

function pieceOf({ of, metal, stones = [] }: Picture): readonly Shape[] {
  const colour = METAL[metal];
  switch (of) {
    case 'ring':
      return [band(0, -0.02, 0.2, 0.026, colour), ...row(stones, -0.22, 0.075, colour)];
    case 'full hoop':
      return [band(0, -0.04, 0.2, 0.026, colour), ...circle(stones, 0.2, 0.027, colour)];
    case 'brooch':
      return [disc(0, -0.04, 0.2, lit(colour, 0.8)), ...around(stones, colour)];
    case 'chain':
      return Array.from({ length: 26 }, (_, link) => {
        const turn = (link / 26) * 2 * Math.PI;
        return band(0.24 * Math.cos(turn), -0.06 + 0.2 * Math.sin(turn), 0.022, 0.007, colour);
      });
    case 'paper':
      return [block(0, -0.06, 0.28, 0.2, [244, 242, 234]), ...row(stones, -0.06, 0.06, [244, 242, 234])];
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
  ...circle(others, 0.135, 0.042, colour),
  ...(middle ? set(middle, 0, -0.04, 0.075, colour) : []),
];

const circle = (stones: readonly Stone[], radius: number, size: number, colour: Colour): readonly Shape[] =>
  stones.flatMap((stone, i) => {
    const turn = (i / stones.length) * 2 * Math.PI;
    return set(stone, radius * Math.cos(turn), -0.04 + radius * Math.sin(turn), size, colour);
  });

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
  let x = -0.024 * reading.length;
  const bars = [...reading].flatMap((figure) => {
    const shapes = figure === '.' ? [block(x - 0.014, 0.447, 0.005, 0.005, INK)] : figureAt(x + 0.012, BARS[figure] ?? '');
    x += figure === '.' ? 0.014 : 0.056;
    return shapes;
  });
  return [block(0, 0.41, 0.2, 0.07, [176, 194, 168]), ...bars];
}

const figureAt = (cx: number, bars: string): readonly Shape[] =>
  BAR_AT.filter((_, i) => bars[i] === '1').map(([x, y, across]) =>
    block(cx + x * 0.034, 0.41 + y * 0.036, across ? 0.014 : 0.0045, across ? 0.0045 : 0.0165, INK),
  );
