// The spread of repeated weighings of one load: how well a balance agrees with itself.
/** Mean and standard deviation (n − 1) in grams of repeated readings in ng (JCGM 100, 4.2.2); null for fewer than two. */
export function repeatability(readingsNg) {
  const [firstNg] = readingsNg;
  const readings = readingsNg.length;
  if (firstNg === undefined || readings < 2) return null;
  const shifts = readingsNg.map((ng) => (ng - firstNg) / 1e9);
  const mean = shifts.reduce((sum, x) => sum + x, 0) / readings;
  const squares = shifts.reduce((sum, x) => sum + (x - mean) ** 2, 0);
  return { readings, meanG: firstNg / 1e9 + mean, sG: Math.sqrt(squares / (readings - 1)), dof: readings - 1 };
}
