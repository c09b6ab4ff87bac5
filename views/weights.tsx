// The jobs of a period whose weights were checked: how many would show by chance, how many did, and which stand up together.
import { Period } from './parts/period.tsx';
export interface WeightsPage {
  readonly from: string;
  readonly to: string;
  readonly sentence: string;
  readonly standing: number;
  readonly rows: readonly {
    readonly job: string;
    readonly bag: string;
    readonly day: string;
    readonly loss: string;
    readonly says: string;
    readonly stands: boolean;
  }[];
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
        <p class="soft">No job was weighed in and out in these days.</p>
      ) : (
        <section class="block">
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
              {rows.map(({ job, bag, day, loss, says, stands }) => (
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
        </section>
      )}
    </>
  );
}
