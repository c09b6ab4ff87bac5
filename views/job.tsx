// One job on screen: its bag, whether it reckons, the one next entry, and its ledger, newest first.

import type { JobReckoning, Term } from '../src/projections/job-reckoning.ts';
import { decimalsOfStep, formatMass, type MassNg, massNg } from '../src/units/mass.ts';
import type { LedgerLine } from '../src/web/ledger-lines.ts';
import { Beam } from './parts/beam.tsx';
import { Tag } from './parts/tag.tsx';

export type Link = readonly [href: string, words: string];
interface Props {
  readonly facts: {
    readonly bag: string;
    readonly metal: string;
    readonly title: string;
    readonly customer: string | null;
    readonly holder: string | null;
    readonly place: string | null;
    readonly status: string;
    readonly promise: string | null;
  };
  readonly lines: readonly LedgerLine[];
  readonly reckoned: JobReckoning;
  readonly next: Link | null;
  readonly links: readonly Link[];
  readonly written: LedgerLine | null;
}

export function JobView({ facts, lines, reckoned, next, links, written }: Props) {
  const where = [
    facts.customer,
    facts.holder && `with ${facts.holder}`,
    facts.place,
    facts.promise && `promised ${facts.promise}`,
    facts.status,
  ];
  return (
    <>
      {written && (
        <p class="written" role="status">
          Entry {written.seq} written: {written.said}. <a href={`/entries/${written.seq}`}>Look at it or correct it</a>
        </p>
      )}
      <section class="head">
        <Tag code={facts.bag} metal={facts.metal} />
        <h1>{facts.title}</h1>
        <p class="soft">{where.filter(Boolean).join(' · ')}</p>
      </section>
      <Reckoning reckoned={reckoned} />
      <div class="two">
        <section class="next" aria-labelledby="n">
          <h2 id="n">Next</h2>
          {next ? (
            <a class="button" href={next[0]}>
              {next[1]}
            </a>
          ) : (
            <p class="soft">Nothing is due.</p>
          )}
          <details>
            <summary>Write something else</summary>
            <ul class="links">
              {links.map(([href, words]) => (
                <li>
                  <a href={href}>{words}</a>
                </li>
              ))}
            </ul>
          </details>
        </section>
        <section aria-labelledby="l">
          <h2 id="l">What has happened</h2>
          <Ledger lines={lines} />
        </section>
      </div>
    </>
  );
}

function Reckoning({ reckoned }: { readonly reckoned: JobReckoning }) {
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
      <p class="sentence">{sentence}</p>
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

export function Ledger({ lines }: { readonly lines: readonly LedgerLine[] }) {
  return (
    <ol class="ledger">
      {lines.map((line) => (
        <li class={line.correctedBy.length > 0 ? 'struck' : line.corrects === null ? '' : 'joined'}>
          <b>{line.said}</b>
          <span class="num">{line.weight}</span>
          <small>
            <a href={`/entries/${line.seq}`}>{line.seq}</a> · {line.at} · {line.by}
            {line.late && ` · written late: it happened ${line.late}`}
            {line.correctedBy.length > 0 && ` · corrected by ${line.correctedBy.join(', ')}`}
          </small>
        </li>
      ))}
    </ol>
  );
}
