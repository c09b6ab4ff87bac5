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
  readonly heaps: readonly Heap[];
}

export function OwnerView({ heaps }: Props) {
  return (
    <>
      <section class="head">
        <h1>For the owner</h1>
        <p class="ways">
          <a href="/loss">Loss</a>
          <a href="/owner/weights">Weights of a period</a>
          <a href="/flow">Metal through the shop</a>
        </p>
        {heaps.length === 0 && <p class="sentence">Nothing to decide today.</p>}
      </section>
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
