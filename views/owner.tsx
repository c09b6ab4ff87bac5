// What needs a decision today, heap by heap.
import { Tag } from './parts/tag.tsx';

/** One thing to decide: the job, and why it is here. */
interface ToDecide {
  readonly href: string;
  readonly bag: string;
  readonly metal: string;
  readonly what: string;
  readonly why: string;
}
export interface Heap {
  readonly title: string;
  readonly rows: readonly ToDecide[];
}

interface Props {
  /** Why nothing may be written, as a sentence. */
  readonly readOnly: string | null;
  readonly heaps: readonly Heap[];
}

export function OwnerView({ readOnly, heaps }: Props) {
  return (
    <>
      <section class="head">
        <h1>For the owner</h1>
        <p class="ways">
          <a href="/loss">Loss</a>
          <a href="/owner/weights">Weights of a period</a>
          <a href="/flow">Metal through the shop</a>
        </p>
        {heaps.length === 0 && readOnly === null && <p class="sentence">Nothing to decide today.</p>}
      </section>
      {readOnly !== null && (
        <section class="summary">
          <h2>The ledger is read only</h2>
          <p>{readOnly}</p>
          <a href="/trail">Check the log</a>
        </section>
      )}
      {heaps.map(({ title, rows }) => (
        <section class="block">
          <h2>
            {title} <small>{rows.length}</small>
          </h2>
          <ul class="jobs">
            {rows.map(({ href, bag, metal, what, why }) => (
              <li>
                <Tag code={bag} metal={metal} href={href} />
                <div>
                  <b>{what}</b>
                  <small>{why}</small>
                </div>
              </li>
            ))}
          </ul>
        </section>
      ))}
    </>
  );
}
