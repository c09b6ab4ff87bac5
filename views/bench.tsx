// The bench: the job in hand largest, then what comes next, what is late, and what waits in the safe.
import { type JobLine, JobList, Promised } from './parts/jobs.tsx';
import { Tag } from './parts/tag.tsx';

interface Props {
  readonly inHand: JobLine | null;
  readonly next: readonly JobLine[];
  readonly late: readonly JobLine[];
  readonly waiting: readonly JobLine[];
  readonly balances: readonly BalanceLine[];
}
export interface BalanceLine {
  readonly id: string;
  readonly name: string;
  /** When it was last checked and how that went. */
  readonly checked: string;
  readonly failed: boolean;
}

export function BenchView({ inHand, next, late, waiting, balances }: Props) {
  return (
    <>
      <section class="head">
        <h1>Bench</h1>
      </section>
      {inHand ? <InHand job={inHand} /> : <p class="sentence">{`Bench clear.${waiting.length > 0 ? waits(waiting.length) : ''}`}</p>}
      <Group title="Next on my bench" jobs={next} />
      <Group title="Late, and not on my bench" jobs={late} />
      <Group title="Waiting in the safe" jobs={waiting} />
      <Balances balances={balances} />
      <p>
        <a href="/whose">Whose is this? A piece or stone without a label</a>
      </p>
    </>
  );
}

const waits = (count: number) => (count === 1 ? ' One job waits in the safe.' : ` ${count} jobs wait in the safe.`);

function InHand({ job }: { readonly job: JobLine }) {
  return (
    <section class="next in-hand" aria-labelledby="in-hand">
      <h2 id="in-hand">In my hand</h2>
      <Tag code={job.bag} metal={job.metal} />
      <p>
        <b>{job.what}</b>
      </p>
      <p class="soft">
        <Promised job={job} />
        {job.next && `next: ${job.next.toLowerCase()}`}
      </p>
      <a class="button" href={`/jobs/${job.id}`}>
        Open {job.bag}
      </a>
    </section>
  );
}

function Group({ title, jobs }: { readonly title: string; readonly jobs: readonly JobLine[] }) {
  if (jobs.length === 0) return null;
  return (
    <section class="block">
      <h2>{title}</h2>
      <JobList jobs={jobs} />
    </section>
  );
}

function Balances({ balances }: Pick<Props, 'balances'>) {
  return (
    <section class="block">
      <h2>Balances</h2>
      <ul class="listed-rows">
        {balances.map(({ id, name, checked, failed }) => (
          <li>
            <span>
              <a href={`/balances/${id}`}>{name}</a> {failed ? <b>{checked}</b> : <small>{checked}</small>}
            </span>
            <a href={`/balances/${id}/check`}>
              Check it<span class="sr"> ({name})</span>
            </a>
          </li>
        ))}
      </ul>
    </section>
  );
}
