// Glue from the rows of trade-facts, marks and stone-care to the functions of src/units and src/trade.
import type { Fns } from './compare.ts';

export const TRADE_FNS = {} satisfies Fns;
