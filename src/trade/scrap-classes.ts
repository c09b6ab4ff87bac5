// The four classes a refiner takes scrap in. One class a lot: they are charged and assayed differently (JRG).

export type ScrapClass = 'bullion' | 'stoneRemoval' | 'sweeps' | 'solutions';

/** Class of each usual material. */
export const SCRAP_CLASSES = {
  sprues: 'bullion',
  'clean stripping': 'bullion',
  'finished jewellery with stones still in': 'stoneRemoval',
  'floor sweeps': 'sweeps',
  'polishing dust and buffs': 'sweeps',
  'ultrasonic liquid': 'solutions',
} as const satisfies Readonly<Record<string, ScrapClass>>;
export type ScrapMaterial = keyof typeof SCRAP_CLASSES;
