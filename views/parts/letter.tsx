// The lists of a record letter: the stones, what was removed and added, and what was done when.
import type { Crossing, Letter, LetterStone } from '../../src/projections/letter.ts';
import type { LetterShown } from '../letter.tsx';

export function Stones({ stones }: { readonly stones: readonly LetterStone[] }) {
  if (stones.length === 0) return null;
  return (
    <section>
      <h2>The stones</h2>
      <ul class="rows">
        {stones.map(({ seat, what, weights, where }) => (
          <li>
            <b>
              {seat}: {what}
            </b>
            <span>{weights}</span>
            <small>{where}</small>
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
        {removed.map((one) => (
          <Row row={one} before="Worn metal removed" />
        ))}
        {added.map((one) => (
          <Row row={one} before="Added" />
        ))}
        {removed.length + added.length === 0 && <li>No metal was removed or added.</li>}
        {dust !== null && (
          <li>
            <b>Dust and filings</b>
            <span />
            <small>{dust}</small>
          </li>
        )}
      </ul>
    </section>
  );
}

function Row({ row: { what, weight, where }, before }: { readonly row: Crossing; readonly before: string }) {
  return (
    <li>
      <b>
        {before}: {what}
      </b>
      <span>{weight}</span>
      <small>{where}</small>
    </li>
  );
}

export function Timeline({ moments }: Pick<LetterShown, 'moments'>) {
  return (
    <section>
      <h2>What was done, and when</h2>
      <ol class="rows">
        {moments.map(({ seq, what, at, by, weight, correctedBy, corrects }) => (
          <li>
            <b>{what}</b>
            <span>{weight}</span>
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
