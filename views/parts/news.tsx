// "Somebody wrote on this job": asked for while the page is open; without scripts a plain link does the same.
const EVERY = '15s';

/** Watches a job of which `after` entries are on the page. */
export function Watch({ job, after }: { readonly job: string; readonly after: number }) {
  return (
    <div role="status" hx-get={`/jobs/${job}/news?after=${after}`} hx-trigger={`every ${EVERY}`} hx-swap="innerHTML">
      <noscript>
        <a href={`/jobs/${job}`}>Look for new entries</a>
      </noscript>
    </div>
  );
}

export function News({ job, seqs }: { readonly job: string; readonly seqs: readonly number[] }) {
  const last = seqs.at(-1);
  if (last === undefined) return null;
  return (
    <p class="again">
      Somebody wrote on this job: {seqs.length === 1 ? `entry ${last}` : `${seqs.length} entries, up to ${last}`}.{' '}
      <a href={`/jobs/${job}`}>Show the job as it is now</a>
    </p>
  );
}
