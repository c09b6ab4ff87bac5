// The counter: one box for who leaves a piece, one for who collects, and what is in the house by bag.
import type { JobLine } from './parts/jobs.tsx';
import { Promised } from './parts/jobs.tsx';
import { Tag } from './parts/tag.tsx';

type Row = JobLine & { readonly customer: string; readonly status: string };

export function Counter({ rows }: { readonly rows: readonly Row[] }) {
  const [ready, here] = [rows.filter(({ status }) => status === 'finished'), rows.filter(({ status }) => status !== 'finished')];
  return (
    <>
      <section class="head">
        <h1>Counter</h1>
      </section>
      <div class="two doors">
        <Door action="/ticket" name="q" label="Leaving a piece" placeholder="Phone digits or a name" button="Short ticket">
          <a href="/take-in">Full take-in</a> · <a href="/wait">Wait and take</a>
        </Door>
        <Door action="/bag" name="code" label="Collecting" placeholder="Scan or type the bag" button="Open the bag" />
      </div>
      {rows.length === 0 && <p class="soft">Nothing is in the house. Start with the customer’s phone or name.</p>}
      <Rows title="Ready to go home" rows={ready} />
      <Rows title="In the house" rows={here} />
    </>
  );
}

interface DoorProps {
  readonly action: string;
  readonly name: string;
  readonly label: string;
  readonly placeholder: string;
  readonly button: string;
  readonly children?: unknown;
}
function Door({ action, name, label, placeholder, button, children }: DoorProps) {
  return (
    <form class="next" method="get" action={action}>
      <label class="l" for={`door-${name}`}>
        {label}
      </label>
      <input class="text" id={`door-${name}`} name={name} placeholder={placeholder} autocomplete="off" />
      <div class="act">
        <button>{button}</button>
        <span>{children as never}</span>
      </div>
    </form>
  );
}

function Rows({ title, rows }: { readonly title: string; readonly rows: readonly Row[] }) {
  if (rows.length === 0) return null;
  return (
    <section>
      <h2>{title}</h2>
      <ul class="jobs">
        {rows.map((row) => (
          <li>
            <Tag code={row.bag} metal={row.metal} href={`/jobs/${row.id}`} />
            <div>
              <b>{row.what || 'nothing received yet'}</b>
              <small>
                <Promised job={row} />
                {[row.customer, row.where, row.status].filter(Boolean).join(' · ')}
              </small>
            </div>
          </li>
        ))}
      </ul>
    </section>
  );
}
