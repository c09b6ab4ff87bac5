// What is folded from the whole ledger and kept in memory: brought up to date by the entries that came since, never made anew.
import { logSize } from './sizes.ts';
import type { Opening } from './statement.ts';

/** What was folded from the first `size` entries. Nothing else can change it: entries are only ever added. */
interface Kept<T> {
  readonly size: number;
  readonly value: Promise<T>;
}

/**
 * Keeps one value for each ledger: `begin` before its first entry, then what `grow` makes of it with the entries from number `from` up to `to`.
 * Whoever reads an older moment is given the newest value there is. After a failure it begins again.
 */
export function growing<T>(
  begin: () => T,
  grow: (store: Opening, before: T, from: number, to: number) => Promise<T>,
): (store: Opening) => Promise<T> {
  const known = new WeakMap<Opening, Kept<T>>();
  return async (store) => {
    const size = await logSize(store);
    const before = known.get(store) ?? { size: 0, value: Promise.resolve(begin()) };
    if (size <= before.size) return before.value;
    const value = before.value.then((folded) => grow(store, folded, before.size, size));
    const kept = { size, value };
    known.set(store, kept);
    value.catch(() => {
      if (known.get(store) === kept) known.delete(store);
    });
    return value;
  };
}
