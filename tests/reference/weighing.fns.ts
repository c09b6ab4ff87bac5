// Glue from check rows to the functions of src/weighing.
import type { Fns } from './compare.ts';

export const WEIGHING_FNS = {} satisfies Fns;
