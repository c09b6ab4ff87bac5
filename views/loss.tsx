// Is our loss ordinary, or creeping? One chart for each bench, work and metal; for the owner alone, and of benches, never of persons.

import { Run, type RunPoint } from './charts/run.tsx';
import { type CheckedJob, CheckedJobs } from './parts/checked-jobs.tsx';

export interface ChartShown {
  readonly title: string;
  readonly sentence: string;
  readonly isOff: boolean;
  readonly more: readonly string[];
  /** Where its jobs may be accepted as the baseline, and how many they are; null below twenty, and once one is accepted. */
  readonly accept: { readonly href: string; readonly jobs: number } | null;
  readonly losses: readonly RunPoint[];
  readonly usual: number;
  /** Running sums against their limit; null below twenty jobs. */
  readonly sums: { readonly points: readonly RunPoint[]; readonly limit: number } | null;
  readonly rows: readonly CheckedJob[];
}

export function LossView({ charts, note }: { readonly charts: readonly ChartShown[]; readonly note: string }) {
  return (
    <>
      <section class="head">
        <h1>Loss</h1>
        <p class="soft">{note}</p>
        <p>
          <a href="/owner/weights">The jobs of a period</a> · <a href="/flow">Metal through the shop</a>
        </p>
      </section>
      {charts.length === 0 && (
        <p class="sentence">
          Too few jobs to judge (0 of 20). A job counts once its work is finished, if it leaves dust and was checked by weight.
        </p>
      )}
      {charts.map((chart) => (
        <ChartSection chart={chart} />
      ))}
    </>
  );
}

function ChartSection({ chart: { title, sentence, isOff, more, accept, losses, usual, sums, rows } }: { readonly chart: ChartShown }) {
  return (
    <section class="block">
      <h2>{title}</h2>
      <p class={isOff ? 'off-words' : 'sentence'}>{sentence}</p>
      {more.map((words) => (
        <p>{words}</p>
      ))}
      {sums && (
        <>
          <h3>Loss of each job, in milligrams to the gram worked</h3>
          <Run title={`${title}: loss of each job`} points={losses} lines={[{ at: usual, words: 'usual here', isLimit: false }]} />
          <h3>How far losses have run above usual</h3>
          <Run
            title={`${title}: running sum above usual, gains dashed`}
            points={sums.points}
            lines={[{ at: sums.limit, words: 'look into it', isLimit: true }]}
          />
        </>
      )}
      {accept && (
        <p>
          <a class="do" href={accept.href}>
            Accept these {accept.jobs} jobs as the baseline
          </a>
        </p>
      )}
      <details>
        <summary>The jobs in figures</summary>
        <CheckedJobs rows={rows} />
      </details>
    </section>
  );
}
