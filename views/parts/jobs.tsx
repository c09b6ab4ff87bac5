// A list of jobs by their bags, as the bench, the safe and the owner see it.
import { Tag } from './tag.tsx';

/** A job as a list shows it: its bag, what it is, the entry that comes next, and the day. */
export interface JobLine {
  readonly id: string;
  readonly bag: string;
  readonly metal: string;
  readonly what: string;
  readonly next: string;
  readonly promised: string;
  readonly late: boolean;
  readonly where: string;
}

export function JobList({ jobs }: { readonly jobs: readonly JobLine[] }) {
  return (
    <ul class="jobs">
      {jobs.map((job) => (
        <li>
          <Tag code={job.bag} metal={job.metal} href={`/jobs/${job.id}`} />
          <div>
            <b>{job.what}</b>
            <small>
              <Promised job={job} />
              {[job.where, job.next && `next: ${job.next.toLowerCase()}`].filter(Boolean).join(' · ')}
            </small>
          </div>
        </li>
      ))}
    </ul>
  );
}

export function Promised({ job }: { readonly job: JobLine }) {
  if (job.promised === '') return null;
  const words = `promised ${job.promised} · `;
  return job.late ? <b class="late">late: {words}</b> : <span>{words}</span>;
}
