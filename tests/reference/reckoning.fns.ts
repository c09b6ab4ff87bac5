// Glue from check rows to the functions of src/reckoning.
import type { Fns } from './compare.ts';

export const RECKONING_FNS = {} satisfies Fns;
