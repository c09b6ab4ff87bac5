// More than one fault at once: where no single one explains the residuals, the fewest that do together, each with its size beside the others.
import type { Adjustment } from './adjustment.ts';
import { chiSquaredTail } from './distributions.ts';
import { dot, solve, type Vector } from './matrix.ts';
import { type Alike, isPlausible, type Suspect, type SuspectSet, type Weighed, WITHIN_BEST } from './suspects.ts';

/** Sets of suspects that explain the residuals only together: one of each is at fault. */
export type Together = readonly SuspectSet[];

/** One fault is too few when it leaves residuals that chance makes this often, so in a network with a single fault a second is invented no oftener (what the best one leaves is no more than what the true one leaves, χ² with rank − 1). Usual dust that nobody weighed is skewed where this takes it for normal: then up to twice in a hundred an unusual dust is named beside the fault. */
const MORE_ALPHA = 0.005;
/** More faults than this are not sought: nobody acts on them one by one. */
const FAULTS_MOST = 3;
/** How many of the best combinations are carried to the next fault: every pair of up to 64 sets is tried, of more those with one of the best 64. */
const CARRIED = 64;

/** What may be wrong, best first: single faults, or several at once where one is not enough; nothing where not even three are. */
export const explanationsIn = ({
  suspects,
  together: several,
}: {
  readonly suspects: readonly SuspectSet[];
  readonly together: readonly Together[] | null;
}): readonly Together[] => (several === null || several.length > 0 ? (several ?? []) : suspects.map((set) => [set]));

interface Combination {
  /** Places of its sets, ascending. */
  readonly members: readonly number[];
  /** Its directions made orthonormal, and what they leave of the whitened residuals. */
  readonly basis: readonly Vector[];
  readonly left: Vector;
  readonly t: number;
}

/** The combinations of the fewest faults that explain the residuals, best first, all within 3.84 of the best; empty where one fault is enough, null where not even three are. */
export function together(
  { sets, criticalZ }: Weighed,
  { white, gamma, rank }: Pick<Adjustment, 'white' | 'gamma' | 'rank'>,
): readonly Together[] | null {
  let carried: readonly Combination[] = [{ members: [], basis: [], left: white, t: 0 }];
  for (let count = 1; count <= Math.min(FAULTS_MOST, rank); count++) {
    carried = extended(carried, sets);
    const said = carried.flatMap((one) => {
      const fitted = jointly(one, sets, white, criticalZ);
      return fitted ? [{ t: one.t, fitted }] : [];
    });
    const [best] = said;
    if (!best) return [];
    if (count < rank && chiSquaredTail(Math.max(0, gamma - best.t), rank - count) < MORE_ALPHA) continue;
    return count === 1 ? [] : said.filter(({ t }) => t > best.t - WITHIN_BEST).map(({ fitted }) => fitted);
  }
  return null;
}

/** Every combination with one set more, the best first: all are scored, and only those that are carried on are made. */
function extended(carried: readonly Combination[], sets: readonly Alike[]): readonly Combination[] {
  const scored = new Map<string, { readonly of: Combination; readonly i: number; readonly t: number }>();
  for (const of of carried)
    for (const [i, { best }] of sets.entries()) {
      const key = joined(of, i).join();
      if (of.members.includes(i) || scored.has(key)) continue;
      const own = of.basis.reduce((rest, unit) => rest - dot(unit, best.direction) ** 2, 1);
      if (own > ALIKE) scored.set(key, { of, i, t: of.t + dot(best.direction, of.left) ** 2 / own });
    }
  const best = [...scored.values()].sort((one, other) => other.t - one.t).slice(0, CARRIED);
  return best.map(({ of, i, t }) => {
    const across = of.basis.reduce((rest, unit) => minus(rest, unit, dot(rest, unit)), sets[i]?.best.direction ?? []);
    const length = Math.sqrt(dot(across, across));
    const unit = across.map((value) => value / length);
    return { members: joined(of, i), basis: [...of.basis, unit], left: minus(of.left, unit, dot(unit, of.left)), t };
  });
}

const joined = ({ members }: Combination, i: number): readonly number[] => [...members, i].sort((one, other) => one - other);
/** A direction with a smaller share of its own (squared) says nothing that the others do not say. */
const ALIKE = 1e-8;
const minus = (from: Vector, unit: Vector, times: number): Vector => from.map((value, i) => value - times * (unit[i] ?? 0));

/** The sizes of one combination, each beside the others; null where one of its sets holds no fault that could be. */
function jointly({ members }: Combination, sets: readonly Alike[], white: Vector, criticalZ: number): Together | null {
  const chosen = members.flatMap((i) => sets[i] ?? []);
  const directions = chosen.map(({ best }) => best.direction);
  const gram = directions.map((one) => directions.map((other) => dot(one, other)));
  const sizes = solve(
    gram,
    directions.map((one) => dot(one, white)),
  );
  const said = chosen.map(({ suspects, best }, k): SuspectSet => {
    const spread = Math.sqrt(
      solve(
        gram,
        gram.map((_, i) => Number(i === k)),
      )[k] ?? 0,
    );
    const size = sizes[k] ?? 0;
    const beside = suspects.map((one): Suspect => ({ ...one, size: Math.sign(one.size * best.z) * size * one.u, u: spread * one.u }));
    const z = size / spread;
    return { suspects: beside.filter(isPlausible), z, t: z * z, significant: Math.abs(z) >= criticalZ };
  });
  return said.every(({ suspects }) => suspects.length > 0) ? said : null;
}
