// Metal through the shop over a period in fine grams, one metal at a time, and the bench skins against the jobs above them.

import { type Band, Stream } from './charts/stream.tsx';
import { Period } from './parts/period.tsx';

export interface FlowPage {
  readonly from: string;
  readonly to: string;
  readonly metals: readonly {
    readonly metal: string;
    readonly layers: readonly (readonly { readonly id: string; readonly words: string }[])[];
    readonly bands: readonly Band[];
    readonly rows: readonly { readonly words: string; readonly fine: string; readonly how: string; readonly seqs: readonly number[] }[];
    readonly holdings: readonly { readonly words: string; readonly href: string; readonly opening: string; readonly closing: string }[];
    readonly unknown: readonly number[];
    /** Its stocks between counts, newest first, and what was tested over them. */
    readonly balance: { readonly says: readonly string[]; readonly tested: string; readonly isOff: boolean };
  }[];
  readonly skins: readonly { readonly words: string; readonly href: string; readonly says: readonly string[] }[];
}

export function FlowView({ from, to, metals, skins }: FlowPage) {
  return (
    <>
      <section class="head">
        <h1>Metal through the shop</h1>
        <Period action="/flow" from={from} to={to} />
        <p class="soft">In fine grams: each weight times the fineness it is marked with. A mark is no assay.</p>
      </section>
      {metals.length === 0 && <p class="sentence">No metal moved in these days.</p>}
      {metals.map((one) => (
        <Metal {...one} />
      ))}
      <section class="block">
        <h2>Bench skins</h2>
        {skins.length === 0 && <p class="soft">No skin has been weighed twice yet. Weigh what lies in it once a week.</p>}
        {skins.map(({ words, href, says }) => (
          <>
            <h3>
              <a href={href}>{words}</a>
            </h3>
            <ul class="said">
              {says.map((line) => (
                <li>{line}</li>
              ))}
            </ul>
          </>
        ))}
      </section>
    </>
  );
}

function Metal({ metal, layers, bands, rows, holdings, unknown, balance }: FlowPage['metals'][number]) {
  return (
    <section class="block">
      <h2>{metal}</h2>
      <figure class="charted">
        <Stream title={`${metal}: ${rows.map(({ words, fine }) => `${words} ${fine}`).join('; ')}`} layers={layers} bands={bands} />
        <table>
          <caption>The same in figures</caption>
          <tbody>
            {rows.map(({ words, fine, how, seqs }) => (
              <tr>
                <th scope="row">
                  {words}
                  <br />
                  <small>
                    {how}
                    {seqs.slice(0, 12).map((seq) => (
                      <>
                        {' '}
                        <a href={`/entries/${seq}`}>{seq}</a>
                      </>
                    ))}
                    {seqs.length > 12 && ` and ${seqs.length - 12} more`}
                  </small>
                </th>
                <td class="num">{fine}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </figure>
      {holdings.length > 0 && (
        <table>
          <caption>In the holdings by the entries, in fine grams</caption>
          <thead>
            <tr>
              <th scope="col">Holding</th>
              <th scope="col">At the beginning</th>
              <th scope="col">At the end</th>
            </tr>
          </thead>
          <tbody>
            {holdings.map(({ words, href, opening, closing }) => (
              <tr>
                <th scope="row">
                  <a href={href}>{words}</a>
                </th>
                <td class="num">{opening}</td>
                <td class="num">{closing}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
      <Counted {...balance} />
      {unknown.length > 0 && <p class="soft">Of no known fineness, and not counted: entries {unknown.join(', ')}.</p>}
    </section>
  );
}

function Counted({ says, tested, isOff }: FlowPage['metals'][number]['balance']) {
  return (
    <>
      <h3>Stock between counts</h3>
      <p class={isOff ? 'off-words' : 'sentence'}>{tested}</p>
      {says.length > 0 && (
        <ul class="said">
          {says.map((line) => (
            <li>{line}</li>
          ))}
        </ul>
      )}
    </>
  );
}
