// The record letter: one scroll without a word of jargon, the same on the screen, in print and in the file that goes home.
import { raw } from 'hono/html';
import type { JobTold } from '../src/letter/job-told.ts';
import { Beam } from './parts/beam.tsx';
import { Corrections, Crossings, type Src, Stones, ThenAndNow, Timeline } from './parts/letter.tsx';

interface PageProps {
  readonly shown: JobTold;
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
  readonly shown: JobTold;
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
  return (
    <article class="letter">
      <LetterFacts shown={shown} src={src} />
      {shown.letter.changed && (
        <section>
          <h2>Your insurance</h2>
          <p>The piece is not what it was: tell whoever insures it, and have it valued again. This letter is no valuation.</p>
        </section>
      )}
      {shown.terms && (
        <section class="terms">
          <h2>The terms it was agreed under</h2>
          <ol>
            {shown.terms.lines.map((line) => (
              <li>{line}</li>
            ))}
          </ol>
        </section>
      )}
      <section>
        <h2>Check this letter</h2>
        <p>
          <b>NOT CHECKED</b> by anything but our own program. The file of this letter carries our {shown.entries} signed entries of this
          job, so that somebody else can check them without asking us: keep it.
        </p>
        <details>
          <summary>How it is checked, and what it does not show</summary>
          <p>
            The file holds the entries as they were written, the place of each in the signed record, and our public key, by published
            standards (RFC 9162 for the tree, C2SP for the signed checkpoint). Names, values and the shop’s own notes stand in those entries
            sealed: as digests, not as words.
          </p>
          <p>
            It does not show that what was written was true when it was written. Two things that weigh the same need not be the same thing:
            weights, photographs, marks and what you saw at the loupe stand together. No outside witness has signed this record, so it
            cannot show that nobody keeps a second one.
          </p>
        </details>
      </section>
    </article>
  );
}

/** What the screen turned to the customer shows, and the letter before its small print. */
export function LetterFacts({ shown, src }: Pick<PageProps, 'shown' | 'src'>) {
  const { letter, moments } = shown;
  return (
    <>
      <header>
        <p class="soft">
          {[shown.shop, ...shown.reach].join(', ')} · bag <b>{shown.bag}</b> · {shown.issued}
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
    </>
  );
}

/** The screen turned to the customer: her own things, and nothing of the shop's or of others'. */
export function CustomerFace({ shown, job, src }: Omit<PageProps, 'told'>) {
  return (
    <>
      <article class="letter">
        <LetterFacts shown={shown} src={src} />
      </article>
      <p>
        <a href={`/jobs/${job}`}>Turn the screen back</a>
      </p>
    </>
  );
}
