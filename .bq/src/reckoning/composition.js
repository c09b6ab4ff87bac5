// Masses and finenesses together: the fine metal in a stream is mass × share, so the balances are curved.
import { adjustCurved } from './adjustment.js';
/** Reconciles masses and shares so that each node keeps its mass and each metal; `covariance` is over masses first, then the shares stream by stream. */
export function reckonAssayed(network, covariance) {
  const { streams } = network;
  return adjustCurved([...streams.map(({ massG }) => massG), ...streams.flatMap(({ shares }) => shares)], covariance, conserved(network));
}
/** Σ factor·x − constant. */
function linear(x, factors, constant = 0) {
  return { value: factors.reduce((sum, [at, factor]) => sum + factor * (x[at] ?? 0), -constant), slopes: factors };
}
/** Σ sign·mass·share over [sign, place of the mass, place of the share]. */
function bilinear(x, products) {
  const value = products.reduce((sum, [sign, mass, share]) => sum + sign * (x[mass] ?? 0) * (x[share] ?? 0), 0);
  const slopes = products.flatMap(([sign, mass, share]) => [
    [mass, sign * (x[share] ?? 0)],
    [share, sign * (x[mass] ?? 0)],
  ]);
  return { value, slopes };
}
function conserved({ nodes, streams, complete }) {
  const metals = [...(streams[0]?.shares.keys() ?? [])];
  const size = streams.length * (metals.length + 1);
  const place = (j, metal) => streams.length + j * metals.length + metal;
  // With all shares adding up to 1 the last metal's balance follows from the others.
  const counted = complete ? metals.slice(0, -1) : metals;
  const ends = nodes.map((node) =>
    streams.flatMap(({ from, to }, j) => {
      const sign = Number(to === node) - Number(from === node);
      return sign === 0 ? [] : [[j, sign]];
    }),
  );
  return (x) => {
    const masses = ends.map((at) => linear(x, at));
    const fine = ends.flatMap((at) =>
      counted.map((metal) =>
        bilinear(
          x,
          at.map(([j, sign]) => [sign, j, place(j, metal)]),
        ),
      ),
    );
    const whole = complete
      ? streams.map((_, j) =>
          linear(
            x,
            metals.map((metal) => [place(j, metal), 1]),
            1,
          ),
        )
      : [];
    const balances = [...masses, ...fine, ...whole];
    return { values: balances.map(({ value }) => value), slopes: balances.map(({ slopes }) => dense(slopes, size)) };
  };
}
function dense(slopes, size) {
  const row = new Array(size).fill(0);
  for (const [at, slope] of slopes) row[at] = (row[at] ?? 0) + slope;
  return row;
}
