// Masses and finenesses together: the fine metal in a stream is mass × share, so the balances are curved.
import { adjustCurved, type Constraints, type Reconciled } from './adjustment.ts';
import type { Matrix, Vector } from './matrix.ts';
import { OUTSIDE } from './network.ts';

/** A stream of known mass and shares (fractions of 1) of each metal named for the whole network. */
export interface AssayedStream {
  readonly id: string;
  readonly from: string;
  readonly to: string;
  readonly massG: number;
  readonly shares: Vector;
}
export interface AssayedNetwork {
  readonly nodes: readonly string[];
  readonly streams: readonly AssayedStream[];
  /** Whether the metals named are all there is, so that a stream's shares add up to 1. */
  readonly complete: boolean;
}

/** Reconciles masses and shares so that each node keeps its mass and each metal; `covariance` is over masses first, then the shares stream by stream. */
export function reckonAssayed(network: AssayedNetwork, covariance: Matrix): Reconciled {
  const { streams } = network;
  return adjustCurved([...streams.map(({ massG }) => massG), ...streams.flatMap(({ shares }) => shares)], covariance, conserved(network));
}

function conserved({ nodes, streams, complete }: AssayedNetwork): Constraints {
  const [first] = streams;
  const metals = first?.shares.length ?? 0;
  const size = streams.length * (metals + 1);
  const shareAt = (j: number, metal: number) => streams.length + j * metals + metal;
  // With all shares adding up to 1 the last metal's balance follows from the others.
  const counted = Array.from({ length: complete ? metals - 1 : metals }, (_, metal) => metal);
  return (x) => {
    const values: number[] = [];
    const slopes: number[][] = [];
    const add = (terms: readonly { readonly at: number; readonly slope: number }[], value: number) => {
      const row = new Array<number>(size).fill(0);
      for (const { at, slope } of terms) row[at] = (row[at] ?? 0) + slope;
      values.push(value);
      slopes.push(row);
    };
    for (const node of nodes.filter((name) => name !== OUTSIDE)) {
      const signed = streams
        .map(({ from, to }, j) => ({ j, sign: Number(to === node) - Number(from === node), mass: x[j] ?? 0 }))
        .filter(({ sign }) => sign !== 0);
      add(
        signed.map(({ j, sign }) => ({ at: j, slope: sign })),
        signed.reduce((sum, { sign, mass }) => sum + sign * mass, 0),
      );
      for (const metal of counted) {
        const share = (j: number) => x[shareAt(j, metal)] ?? 0;
        add(
          signed.flatMap(({ j, sign, mass }) => [
            { at: j, slope: sign * share(j) },
            { at: shareAt(j, metal), slope: sign * mass },
          ]),
          signed.reduce((sum, { j, sign, mass }) => sum + sign * mass * share(j), 0),
        );
      }
    }
    if (complete) {
      for (const j of streams.keys()) {
        const at = Array.from({ length: metals }, (_, metal) => shareAt(j, metal));
        add(
          at.map((index) => ({ at: index, slope: 1 })),
          at.reduce((sum, index) => sum + (x[index] ?? 0), -1),
        );
      }
    }
    return { values, slopes };
  };
}
