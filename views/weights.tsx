// The jobs of a period whose weights were checked: how many would show by chance, how many did, and which stand up together.
import { type CheckedJob, CheckedJobs } from './parts/checked-jobs.tsx';
import { Period } from './parts/period.tsx';
export interface WeightsPage {
  readonly from: string;
  readonly to: string;
  readonly sentence: string;
  readonly standing: number;
  readonly rows: readonly CheckedJob[];
}

export function WeightsView({ from, to, sentence, standing, rows }: WeightsPage) {
  return (
    <>
      <section class="head">
        <h1>Weights of a period</h1>
        <Period action="/owner/weights" from={from} to={to} />
        <p class="sentence">{sentence}</p>
        {rows.length > 0 && (
          <p>
            {standing === 0
              ? 'None of them stands out once it is counted how many were looked at.'
              : `${standing} of them ${standing === 1 ? 'stands' : 'stand'} out even so, marked below: start there.`}
          </p>
        )}
      </section>
      {rows.length === 0 ? (
        <p class="soft">No finished job of these days was checked by weight.</p>
      ) : (
        <section class="block">
          <CheckedJobs rows={rows} />
        </section>
      )}
    </>
  );
}
