// Why does it not agree? One job's weights step by step, the causes that would explain a gap, and what to weigh again.
import type { JobReckoning } from '../src/projections/job-reckoning.ts';
import type { Why } from '../src/projections/why.ts';
import { Waterfall } from './charts/waterfall.tsx';
import { Entries, Steps } from './parts/steps.tsx';
import { Tag } from './parts/tag.tsx';

export interface ReckoningPage {
  readonly job: string;
  readonly bag: string;
  readonly metal: string;
  readonly reckoned: JobReckoning;
  readonly why: Why;
  /** The customer's sentence, the sentence on their own metal, one for each stone, and the insurer's lines. */
  readonly customer: readonly string[];
  readonly stones: readonly string[];
  readonly insurer: readonly string[];
}

export function ReckoningView({ job, bag, metal, reckoned, why, customer, stones, insurer }: ReckoningPage) {
  const agrees = reckoned.closed?.verdict === 'agrees' && why.suspects.length === 0;
  return (
    <>
      <section class="head">
        <Tag code={bag} metal={metal} href={`/jobs/${job}`} />
        <h1>{headOf(reckoned, why)}</h1>
        <p class={reckoned.state === 'off' ? 'off-words' : 'sentence'}>{reckoned.sentence}</p>
        {reckoned.doubted.length > 0 && (
          <p class="again">
            <b>The balance failed its check.</b> Read on it since the last good check: <Entries seqs={reckoned.doubted} />. The readings
            stand as they were; weigh again on a balance that passes.
          </p>
        )}
      </section>
      {!agrees && reckoned.closed !== null && <Causes why={why} job={job} explained={reckoned.explained} />}
      <section class="block" aria-labelledby="w">
        <h2 id="w">Where the weight went</h2>
        <Waterfall reckoned={reckoned} />
      </section>
      <Steps why={why} />
      <Lines title="Stones" lines={stones} />
      <Lines title="What the customer is told" lines={customer} />
      {insurer.length > 0 && (
        <details class="block">
          <summary>For an insurer: every reading, its balance and its day</summary>
          <List lines={insurer} />
        </details>
      )}
    </>
  );
}

function headOf({ closed, unknownSince }: JobReckoning, { suspects }: Why): string {
  if (!closed || closed.verdict === 'not checked') return unknownSince === null ? 'Not checked by weight yet' : 'What cannot be known';
  if (closed.verdict === 'does not agree') return 'Why does it not agree?';
  if (closed.verdict === 'weigh again') return 'Weigh again';
  if (closed.verdict === 'cannot tell') return 'These weighings are too wide to tell';
  return suspects.length > 0 ? 'It agrees as a whole, but not step by step' : 'It agrees, as far as the balance can tell';
}

function Causes({ why, job, explained }: { readonly why: Why; readonly job: string; readonly explained: boolean }) {
  return (
    <section class="block causes" aria-labelledby="c">
      <h2 id="c">What would explain it</h2>
      {why.slips.length > 0 && (
        <>
          <p>One plain slip would explain the whole gap. It is one of these, or none:</p>
          <List lines={why.slips} />
        </>
      )}
      {why.suspects.length > 0 && (
        <>
          <p>{why.suspects.length === 1 ? 'The figures point to this:' : 'The figures point to one of these, the likeliest first:'}</p>
          <List lines={why.suspects} />
        </>
      )}
      {why.weighAgain.length > 0 && (
        <>
          <h3>What to do now</h3>
          <List lines={why.weighAgain} />
        </>
      )}
      <p>
        Found a slip? Open its entry and correct it: the wrong figure stays readable, the right one counts. Found the cause?{' '}
        <a href={`/jobs/${job}/write/difference_explained`}>Write down why it did not agree</a>.
        {explained && ' Somebody has done so already.'}
      </p>
    </section>
  );
}

function List({ lines }: { readonly lines: readonly string[] }) {
  return (
    <ul class="said">
      {lines.map((line) => (
        <li>{line}</li>
      ))}
    </ul>
  );
}

function Lines({ title, lines }: { readonly title: string; readonly lines: readonly string[] }) {
  if (lines.length === 0) return null;
  return (
    <section class="block">
      <h2>{title}</h2>
      <List lines={lines} />
    </section>
  );
}
