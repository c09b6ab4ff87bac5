// The counter: what is in the house, by bag.
import { Tag } from './parts/tag.tsx';

interface Row {
  readonly id: string;
  readonly bag: string;
  readonly metal: string;
  readonly what: string;
  readonly customer: string;
  readonly status: string;
  readonly promise: string;
  readonly holder: string;
}

export function Counter({ rows }: { readonly rows: readonly Row[] }) {
  return (
    <>
      <section class="head">
        <h1>Counter</h1>
        <a class="button" href="/take-in">
          Take a piece in
        </a>
      </section>
      {rows.length === 0 ? (
        <p class="soft">Nothing is in the house. Start with the customer’s name.</p>
      ) : (
        <ul class="jobs">
          {rows.map((row) => (
            <li>
              <Tag code={row.bag} metal={row.metal} href={`/jobs/${row.id}`} />
              <div>
                <b>{row.what || 'nothing received yet'}</b>
                <small>
                  {[row.customer, row.status, row.holder && `with ${row.holder}`, row.promise && `promised ${row.promise}`]
                    .filter(Boolean)
                    .join(' · ')}
                </small>
              </div>
            </li>
          ))}
        </ul>
      )}
    </>
  );
}
