// The lists of a record letter: the stones, what was removed and added, and what was done when.
import type { JobTold } from '../../src/letter/job-told.ts';
import type { Crossing, Letter, LetterStone } from '../../src/letter/words.ts';

/** Where a photograph is to be had; nowhere once it was deleted. */
export type Src = (hash: string) => string;

export function Stones({ stones }: { readonly stones: readonly LetterStone[] }) {
  if (stones.length === 0) return null;
  return (
    <section>
      <h2>The stones</h2>
      <ul class="rows">
        {stones.map(({ seat, what, weights, told, where }) => (
          <li>
            <b>
              {seat}: {what}
            </b>
            <span>{weights}</span>
            <small>
              {where}
              {told && `. ${told}`}
            </small>
          </li>
        ))}
      </ul>
    </section>
  );
}

export function Crossings({ letter: { removed, added, dust } }: { readonly letter: Letter }) {
  return (
    <section>
      <h2>Removed and added</h2>
      <ul class="rows">
        {[...removed, ...added].map((one) => (
          <Row {...one} />
        ))}
        {removed.length + added.length === 0 && <li>No metal is entered as removed or added.</li>}
        {dust !== null && (
          <li>
            <b>Dust and filings</b>
            <span />
            <small>agreed: what can be gathered {dust}</small>
          </li>
        )}
      </ul>
    </section>
  );
}

function Row({ what, weight, where }: Crossing) {
  return (
    <li>
      <b>{what}</b>
      <span>{weight}</span>
      <small>{where}</small>
    </li>
  );
}

export function Timeline({ moments }: Pick<JobTold, 'moments'>) {
  return (
    <section>
      <h2>What was done, and when</h2>
      <ol class="rows">
        {moments.map(({ seq, what, at, by, weight, first, correctedBy, corrects }) => (
          <li>
            <b>
              {first && first.what !== what && <s>{first.what}</s>} {what}
            </b>
            <span>
              {first && first.weight !== weight && <s>{first.weight}</s>} {weight}
            </span>
            <small>
              {at} · {by} · entry {seq}
              {correctedBy.length > 0 && ` · corrected by entry ${correctedBy.join(', ')}`}
              {corrects !== null && ` · corrects entry ${corrects}`}
            </small>
          </li>
        ))}
      </ol>
    </section>
  );
}

export function ThenAndNow({ photos, src }: { readonly photos: JobTold['photos']; readonly src: Src }) {
  const first = photos.find(({ shows }) => shows === 'on the pan') ?? photos[0];
  const last = photos.at(-1);
  const both = [first, last].filter((one, n) => one !== undefined && (n === 0 || one !== first));
  if (both.length === 0) return null;
  return (
    <section class="then-now" aria-label="Photographs">
      {both.map(
        (one) =>
          one && (
            <figure>
              {src(one.hash) === '' ? (
                <p class="soft">This photograph has been deleted.</p>
              ) : (
                <img src={src(one.hash)} alt={`${one.shows}, ${one.at}`} />
              )}
              <figcaption>
                {one.at}, {one.shows}
              </figcaption>
            </figure>
          ),
      )}
    </section>
  );
}

export function Corrections({ moments }: Pick<JobTold, 'moments'>) {
  const corrected = moments.filter(({ correctedBy }) => correctedBy.length > 0).length;
  return (
    <p class="soft">
      {corrected === 0
        ? 'Nothing in this list was corrected afterwards.'
        : `${corrected === 1 ? 'One entry was' : `${corrected} entries were`} corrected afterwards: what was written first is struck through, and the correction stands in the list above.`}
    </p>
  );
}
