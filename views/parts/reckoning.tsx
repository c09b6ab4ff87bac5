// The beam of a job with the number of each pan; each opens the entries it is made of.
import type { JobReckoning } from '../../src/projections/job-reckoning.ts';
import type { Pan } from '../../src/projections/job-weights.ts';
import { Beam } from './beam.tsx';

export function Reckoning({ job, reckoned }: { readonly job: string; readonly reckoned: JobReckoning }) {
  const { state, sentence, weights } = reckoned;
  return (
    <section class="reckon" aria-labelledby="r">
      <h2 id="r" class="sr">
        The reckoning
      </h2>
      <Beam state={state} tilt={weights.tilt} sentence={sentence} />
      <dl class="pans">
        {weights.pans.map((pan) => (
          <PanNumber pan={pan} />
        ))}
      </dl>
      <p class="sentence">
        {sentence} {state === 'off' && <a href={`/jobs/${job}/reckoning`}>Why does it not agree?</a>}
      </p>
    </section>
  );
}

/** A sum and the entries it is made of. */
function PanNumber({ pan: { words, terms, value } }: { readonly pan: Pan }) {
  return (
    <div>
      <dd>{value ?? '?'}</dd>
      <dt>
        {words}
        {terms.length > 0 && (
          <small>
            {terms.length === 1 ? ' entry ' : ' entries '}
            {[...new Set(terms.map(({ seq }) => seq))].map((seq, index) => (
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
