// The safe, place by place, and the count of one of its trays.
import { type JobLine, JobList } from './parts/jobs.tsx';
import { Tag } from './parts/tag.tsx';

export interface SafePlace {
  readonly id: string;
  readonly name: string;
  /** "tray, kept in the safe". */
  readonly kind: string;
  readonly jobs: readonly JobLine[];
}

interface SafeProps {
  readonly at: string;
  readonly shelves: readonly SafePlace[];
  readonly out: readonly JobLine[];
}

export function SafeView({ at, shelves, out }: SafeProps) {
  return (
    <>
      <section class="head">
        <h1>Safe</h1>
        <p class="soft">As of {at}, by what was written.</p>
      </section>
      {shelves.map((shelf) => (
        <section class="block">
          <h2>
            {shelf.name} <small>{shelf.jobs.length === 1 ? '1 bag' : `${shelf.jobs.length} bags`}</small>
          </h2>
          {shelf.jobs.length === 0 ? (
            <p class="soft">Empty as of {at}. Put a bag in it with “Move” on its job.</p>
          ) : (
            <>
              <JobList jobs={shelf.jobs} />
              <a class="button" href={`/safe/count/${shelf.id}`}>
                Count {shelf.name}
              </a>
            </>
          )}
        </section>
      ))}
      {shelves.length === 0 && (
        <p>
          No safe is named yet. <a href="/write/place_named">Name a place</a>
        </p>
      )}
      <section class="block">
        <h2>Out of the safe, and with whom</h2>
        {out.length === 0 ? <p class="soft">Nothing is out.</p> : <JobList jobs={out} />}
      </section>
    </>
  );
}

interface CountProps {
  readonly shelf: SafePlace;
  readonly scanned: readonly string[];
  readonly problem: string | null;
  readonly found: readonly JobLine[];
  readonly missing: readonly JobLine[];
  readonly extra: readonly { readonly code: string; readonly job: JobLine | null }[];
}

export function CountView({ shelf, scanned, problem, found, missing, extra }: CountProps) {
  return (
    <>
      <section class="head">
        <h1>Count {shelf.name}</h1>
        <p class="sentence" role="status">
          {found.length} of {shelf.jobs.length} found
          {extra.length > 0 && `, ${extra.length} that should be elsewhere`}.
        </p>
      </section>
      <form class="scan" method="get" action={`/safe/count/${shelf.id}`}>
        {scanned.map((code) => (
          <input type="hidden" name="found" value={code} />
        ))}
        <label class="l" for="f-code">
          Scan or type the next bag
        </label>
        {problem && (
          <p class="error" id="f-code-error">
            {problem}
          </p>
        )}
        <div class="act">
          <input
            class="text"
            id="f-code"
            name="code"
            autocomplete="off"
            autocapitalize="characters"
            autofocus
            {...(problem ? { 'aria-invalid': 'true' as const, 'aria-describedby': 'f-code-error' } : {})}
          />
          <button>Count it</button>
        </div>
      </form>
      <Extra extra={extra} place={shelf} />
      <section class="block">
        <h2>{missing.length === 0 ? 'None missing' : `Not found yet: ${missing.length}`}</h2>
        {missing.length > 0 && <JobList jobs={missing} />}
        {missing.length > 0 && <p class="soft">What stays missing: write a note on its job, and who has it once it is found.</p>}
      </section>
      {found.length > 0 && (
        <section class="block">
          <h2>Found</h2>
          <JobList jobs={found} />
        </section>
      )}
      <a href="/safe">Back to the safe</a>
    </>
  );
}

function Extra({ extra, place }: Pick<CountProps, 'extra'> & { readonly place: SafePlace }) {
  if (extra.length === 0) return null;
  return (
    <section class="block">
      <h2>In {place.name}, but not by what was written</h2>
      <ul class="jobs">
        {extra.map(({ code, job }) => (
          <li>
            <Tag code={code} metal={job?.metal ?? 'other'} {...(job ? { href: `/jobs/${job.id}` } : {})} />
            <div>
              <b>{job ? job.what : 'No open job has this bag'}</b>
              <small>{job?.where}</small>
              {job && (
                <a href={`/jobs/${job.id}/write/moved?of=${job.id}&to=${place.id}`}>
                  Write that it is here<span class="sr"> ({code})</span>
                </a>
              )}
            </div>
          </li>
        ))}
      </ul>
    </section>
  );
}
