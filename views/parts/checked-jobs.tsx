// Jobs whose weights were checked, in figures: each opens its reckoning.
export interface CheckedJob {
  readonly job: string;
  readonly bag: string;
  readonly day: string;
  readonly loss: string;
  readonly says: string;
  /** Stands out even once it is counted how many were looked at. */
  readonly stands?: boolean;
}

export function CheckedJobs({ rows }: { readonly rows: readonly CheckedJob[] }) {
  return (
    <table>
      <thead>
        <tr>
          <th scope="col">Job</th>
          <th scope="col">Weighed last</th>
          <th scope="col">Loss</th>
          <th scope="col">Says</th>
        </tr>
      </thead>
      <tbody>
        {rows.map(({ job, bag, day, loss, says, stands = false }) => (
          <tr>
            <td>
              <a class="mini" href={`/jobs/${job}/reckoning`}>
                {bag}
              </a>
            </td>
            <td>{day}</td>
            <td class="num">{loss}</td>
            <td class={stands ? 'off' : ''}>
              {stands && 'stands out: '}
              {says}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
