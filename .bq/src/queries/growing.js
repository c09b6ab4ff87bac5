// What is folded from the whole ledger and kept in memory: brought up to date by the entries that came since, never made anew.
import { logSize } from './sizes.js';
/**
 * Keeps one value for each ledger: `begin` before its first entry, then what `grow` makes of it with the entries from number `from` up to `to`.
 * Whoever reads an older moment is given the newest value there is. After a failure it begins again.
 */
export function growing(begin, grow) {
  const known = new WeakMap();
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
