// The record letter: one scroll without a word of jargon, the same on the screen, in print and in the file that goes home.
import { raw } from 'hono/html';
import type { Letter } from '../src/projections/letter.ts';
import type { Moment } from '../src/projections/timeline.ts';
import { Beam } from './parts/beam.tsx';
import { Crossings, Stones, Timeline } from './parts/letter.tsx';

export interface LetterShown {
  readonly shop: string;
  readonly bag: string;
  readonly title: string;
  readonly issued: string;
  readonly entries: number;
  readonly letter: Letter;
  readonly photos: readonly { readonly hash: string; readonly at: string; readonly shows: string }[];
  readonly moments: readonly (Omit<Moment, 'atMs'> & { readonly at: string })[];
}
type Src = (hash: string) => string;

interface PageProps {
  readonly shown: LetterShown;
  readonly job: string;
  readonly told: boolean;
  readonly src: Src;
}

export function LetterPage({ shown, job, told, src }: PageProps) {
  return (
    <>
      <p class="act no-print">
        <a class="button" href={`/jobs/${job}/letter.html${told ? '?told=yes' : ''}`}>
          Download the letter
        </a>
        <a href={`/jobs/${job}`}>Back to {shown.bag}</a>
      </p>
      <LetterBody shown={shown} src={src} />
    </>
  );
}

interface FileProps {
  readonly shown: LetterShown;
  readonly css: string;
  /** JSON, made safe for a script element. */
  readonly check: string;
  readonly src: Src;
}

export function LetterFile({ shown, css, check, src }: FileProps) {
  return (
    <html lang="en-GB">
      <head>
        <meta charset="utf-8" />
        <meta name="viewport" content="width=device-width,initial-scale=1" />
        <meta name="robots" content="noindex" />
        <title>{`Record letter ${shown.bag} · ${shown.shop}`}</title>
        <style>{raw(css)}</style>
      </head>
      <body>
        <main>
          <LetterBody shown={shown} src={src} />
          <script type="application/json" id="check-data">
            {raw(check)}
          </script>
        </main>
      </body>
    </html>
  );
}

export function LetterBody({ shown, src }: Pick<PageProps, 'shown' | 'src'>) {
  const { letter, moments } = shown;
  return (
    <article class="letter">
      <header>
        <p class="soft">
          {shown.shop} · record letter · bag <b>{shown.bag}</b> · {shown.issued}
        </p>
        <h1>{shown.title}</h1>
        <p class="sentence">{letter.sentence}</p>
      </header>
      <ThenAndNow photos={shown.photos} src={src} />
      <section>
        <h2>The weights</h2>
        <Beam {...letter.beam} />
        <dl class="numbers">
          {letter.beam.numbers.map(({ what, weight }) => (
            <div>
              <dd>{weight}</dd>
              <dt>{what}</dt>
            </div>
          ))}
        </dl>
        <p>{letter.beam.sentence}</p>
      </section>
      <Stones stones={letter.stones} />
      <Crossings letter={letter} />
      <Timeline moments={moments} />
      <Corrections moments={moments} />
      <section>
        <h2>Check this letter</h2>
        <p>
          <b>NOT CHECKED.</b> This page shows what the ledger says; it has not been checked by anything but the shop’s own program. The file
          you can download carries the {shown.entries} entries of this job as they were written, the place of each in the signed record, and
          the shop’s public key. Keep the file. Everything in it follows published standards (RFC 9162 for the tree, C2SP for the signed
          checkpoint), so that whoever knows them can check it without asking us.
        </p>
        <h2>What this letter does not show</h2>
        <p>
          It does not show that what was written was true when it was written. Two things that weigh the same need not be the same thing:
          weights, photographs, marks and what you saw at the loupe stand together. No outside witness has signed this record, so it cannot
          show that nobody keeps a second one.
        </p>
        <h2>Your insurance</h2>
        <p>
          Your valuation and insurance schedule need renewing: the piece is not what it was when they were written. This letter is no
          valuation.
        </p>
      </section>
    </article>
  );
}

function ThenAndNow({ photos, src }: { readonly photos: LetterShown['photos']; readonly src: Src }) {
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

function Corrections({ moments }: Pick<LetterShown, 'moments'>) {
  const corrected = moments.filter(({ correctedBy }) => correctedBy.length > 0).length;
  return (
    <p class="soft">
      {corrected === 0
        ? 'Nothing in this job was corrected afterwards.'
        : `${corrected === 1 ? 'One entry was' : `${corrected} entries were`} corrected afterwards; what is shown is what stands now, and the corrections are in the list above.`}
    </p>
  );
}

interface TellProps {
  readonly job: string;
  readonly bag: string;
  readonly disagreements: readonly string[];
  readonly caution: string;
}

export function TellFirst({ job, bag, disagreements, caution }: TellProps) {
  return (
    <section class="head">
      <h1>Tell your insurer first</h1>
      <p>This letter would say that something does not agree:</p>
      <ul>
        {disagreements.map((one) => (
          <li>{one}</li>
        ))}
      </ul>
      <p class="again">{caution}</p>
      <p class="act">
        <a class="button" href={`/jobs/${job}/write/difference_explained`}>
          Explain the difference
        </a>
        <a href={`/jobs/${job}/letter?told=yes`}>Our insurer knows: show the letter</a>
        <a href={`/jobs/${job}`}>Back to {bag}</a>
      </p>
    </section>
  );
}
