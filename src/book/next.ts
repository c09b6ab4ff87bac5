// When an entry is what one does next on a job: a rank from the job's state. A suggestion, never a rule.
import type { JobState } from './facts.ts';

/** A job as one stands before it. */
export interface JobNow {
  readonly status: JobState;
  /** Pieces in the shop, and stones that are out of their pieces. */
  readonly pieces: number;
  readonly stonesOut: number;
  /** Whether whoever looks answers for it. */
  readonly isMine: boolean;
}
/** The smaller, the sooner; null where it does not belong. Below 10 it is what one does next, from there on it may be done. */
export type Next = (job: JobNow) => number | null;
export const DOES_NEXT = 10;

const isOver = ({ status }: JobNow): boolean => status === 'closed' || status === 'withdrawn';

/** While there is a job, after all that is nearer. */
export const whileOpen =
  (rank: number): Next =>
  (job) =>
    isOver(job) ? null : 60 + rank;

/** Also of a job that is over. */
export const always =
  (rank: number): Next =>
  () =>
    60 + rank;

/** Work at the bench, once it was agreed, in its usual order. */
export const atBench =
  (rank: number): Next =>
  ({ status }) =>
    status === 'agreed' ? 20 + rank : null;
