// The steps of a job between its weighings: what went in against what came out, and the entries each is made of.
import type { Why } from '../../src/projections/why.ts';

/** Links to entries, one after another. */
export function Entries({ seqs }: { readonly seqs: readonly number[] }) {
  return (
    <>
      {seqs.map((seq, index) => (
        <>
          {index > 0 && ', '}
          <a href={`/entries/${seq}`}>entry {seq}</a>
        </>
      ))}
    </>
  );
}

/** A table of the steps, and the weighings in which nothing else would show a mistake. */
export function Steps({ why: { steps, unchecked } }: { readonly why: Why }) {
  return (
    <section class="block" aria-labelledby="s">
      <h2 id="s">Step by step</h2>
      {steps.length < 2 && (
        <p class="soft">
          {steps.length === 0
            ? 'No weighing can be held yet against the one it came in at.'
            : 'The piece was not weighed between the steps, so nothing shows at which of them a weight went. A weighing after each step would.'}
        </p>
      )}
      {steps.length > 0 && (
        <table>
          <thead>
            <tr>
              <th scope="col">Step</th>
              <th scope="col">In against out, usual dust allowed for</th>
              <th scope="col">Made of</th>
            </tr>
          </thead>
          <tbody>
            {steps.map(({ words, gap, seqs }) => (
              <tr>
                <th scope="row">{words}</th>
                <td class={gap?.isOff ? 'off' : ''}>{gap ? gap.words : 'cannot be known: not everything was weighed'}</td>
                <td>
                  <Entries seqs={seqs} />
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
      {unchecked.length > 0 && <p class="soft">Nothing else would show a mistake in: {unchecked.join('; ')}.</p>}
    </section>
  );
}
