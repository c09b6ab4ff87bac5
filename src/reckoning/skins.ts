// A bench skin gathers the filings nobody weighed; weighing it closes the sum over all the jobs worked above it.
import type { MassNg } from '../units/mass.ts';
import type { Worth } from '../weighing/uncertainty.ts';
import { type Closure, closure, type Weighing } from './closure.ts';
import type { UsualLoss } from './loss-law.ts';

export interface SkinJob {
  readonly job: string;
  /** All that was weighed in and out of the job; what is missing fell into the skin. */
  readonly weighings: readonly Weighing[];
  /** The usual dust of this job, of which a share never reaches the skin. */
  readonly usual?: UsualLoss;
}
export interface Weighed {
  readonly ng: MassNg;
  readonly worth: Worth;
  readonly stepNg: MassNg;
}
export interface SkinClosure extends Closure {
  /** What each job gave to the skin by reckoning, loss positive: never a weighing. */
  readonly gave: readonly { readonly job: string; readonly ng: number }[];
}

/** Closes a skin between two weighings (each with what was swept in or sent out in between): Σ over jobs (in − out) + opening + added − removed − closing. */
export function closeSkin(
  jobs: readonly SkinJob[],
  skin: {
    readonly opening: Weighed;
    readonly closing: Weighed;
    readonly added?: readonly Weighed[];
    readonly removed?: readonly Weighed[];
  },
  lost: { readonly share: number; readonly uShare: number } = { share: 1, uShare: 0 },
): SkinClosure {
  const { opening, closing, added = [], removed = [] } = skin;
  const own = [
    ...[opening, ...added].map((weighed, i): Weighing => ({ id: `skin in ${i}`, sign: 1, ...weighed })),
    ...[closing, ...removed].map((weighed, i): Weighing => ({ id: `skin out ${i}`, sign: -1, ...weighed })),
  ];
  const usual = jobs.flatMap((job) => job.usual ?? []);
  const allG = usual.reduce((sum, loss) => sum + loss.meanG, 0);
  const meanG = lost.share * allG;
  const tauG = Math.hypot(lost.uShare * allG, ...usual.map((loss) => lost.share * loss.tauG));
  const closed = closure([...jobs.flatMap(({ weighings }) => weighings), ...own], usual.length > 0 ? { usual: { meanG, tauG } } : {});
  const gave = jobs.map(({ job, weighings }) => ({ job, ng: weighings.reduce((sum, { sign, ng }) => sum + sign * ng, 0) }));
  return { ...closed, gave };
}
