// How much stones that are sold as one size differ in weight among themselves: what the agreement of two weights is measured against.

/** Standard deviation as a share of the weight, from that many carats up (constructed for 1 ct, 0.25 ct, 0.05 ct and 1.5 mm; common practice, no source). */
const SPREADS = [
  [1, 0.05],
  [0.25, 0.04],
  [0.05, 0.06],
  [0, 0.065],
] as const;

/** Standard deviation in carats of stones sold as the size of one of that many carats. */
export const sizeSpreadCt = (carats: number): number => carats * (SPREADS.find(([from]) => carats >= from)?.[1] ?? 0);
