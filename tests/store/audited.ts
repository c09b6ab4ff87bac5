// What stands in a ledger that is open, and its whole check.
import type { Audit } from '../../src/store/beside.ts';
import type { Store } from '../../src/store/open.ts';

/** The audit of a store that is open. */
export const audited = (store: Store): Promise<Audit> => store.check();

/** Every entry's command and first words, in order. */
export async function writtenIn({
  read,
}: Store): Promise<readonly { readonly seq: number; readonly command: string; readonly type: string }[]> {
  const rows = await read('SELECT seq, leaf FROM entry ORDER BY seq');
  return rows.map(({ seq, leaf }) => {
    const { command, type } = JSON.parse(new TextDecoder().decode(leaf as ArrayBuffer)) as { command: string; type: string };
    return { seq: Number(seq), command, type };
  });
}
