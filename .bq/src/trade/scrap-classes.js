// The four classes a refiner takes scrap in. One class a lot: they are charged and assayed differently (JRG).
/** Class of each usual material. */
export const SCRAP_CLASSES = {
  sprues: 'bullion',
  'clean stripping': 'bullion',
  'finished jewellery with stones still in': 'stoneRemoval',
  'floor sweeps': 'sweeps',
  'polishing dust and buffs': 'sweeps',
  'ultrasonic liquid': 'solutions',
};
