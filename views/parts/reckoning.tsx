// The beam of a job with its numbers; each opens the entries it is made of.
import type { JobReckoning, Term } from '../../src/projections/job-reckoning.ts';
import { decimalsOfStep, formatMass, type MassNg, massNg } from '../../src/units/mass.ts';
import { Beam } from './beam.tsx';

export function Reckoning({ job, reckoned }: { readonly job: string; readonly reckoned: JobReckoning }) {
  const { cameIn, expected, last, removed, added, closed, state, sentence } = reckoned;
  const tilt = closed ? closed.lossNg / 1e9 / (3 * closed.uG) : 0;
  const step = cameIn?.stepNg ?? massNg(10_000_000);
  const grams = (ng: MassNg) => formatMass(ng, 'g', decimalsOfStep(step, 'g'));
  return (
    <section class="reckon" aria-labelledby="r">
      <h2 id="r" class="sr">
        The reckoning
      </h2>
      <Beam state={state} tilt={-tilt} sentence={sentence} />
      <dl class="pans">
        <Pan words="came in" terms={cameIn ? [cameIn] : []} value={cameIn && grams(cameIn.ng)} />
        <Pan
          words={
            last && closed
              ? 'weighed last'
              : `in the piece, by reckoning${expected ? `, ± ${grams(massNg(Math.round(2e9 * expected.uG)))}` : ''}`
          }
          terms={last && closed ? [last] : []}
          value={last && closed ? grams(last.ng) : expected && grams(expected.ng)}
        />
        <Pan words="taken out" terms={removed} value={grams(total(removed))} />
        {added.length > 0 && <Pan words="added" terms={added} value={grams(total(added))} />}
      </dl>
      <p class="sentence">
        {sentence} {state === 'off' && <a href={`/jobs/${job}/reckoning`}>Why does it not agree?</a>}
      </p>
    </section>
  );
}

const total = (terms: readonly Term[]): MassNg => massNg(terms.reduce((sum, { ng }) => sum + ng, 0));

/** A sum and the entries it is made of. */
function Pan({ words, terms, value }: { readonly words: string; readonly terms: readonly Term[]; readonly value: string | null }) {
  return (
    <div>
      <dd>
        {value ?? '?'}
        <span>{'\u00a0'}g</span>
      </dd>
      <dt>
        {words}
        {terms.length > 0 && (
          <small>
            {' entry '}
            {terms.map(({ seq }, index) => (
              <>
                {index > 0 && ', '}
                <a href={`/entries/${seq}`}>{seq}</a>
              </>
            ))}
          </small>
        )}
      </dt>
    </div>
  );
}
