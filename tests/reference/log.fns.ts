// Glue from check rows to the functions of src/log.
import type { LogGroups } from './compare.ts';

export const LOG_GROUPS = {} satisfies LogGroups;
