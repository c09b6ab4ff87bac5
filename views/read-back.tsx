// The read-back: what was typed, read aloud before it is written, with everything kept for one more change.
import { type Asks, Secret, upgraded } from './entry-form.tsx';
import { ErrorSummary, type Shown } from './parts/errors.tsx';

export interface ReadBackPage {
  readonly sentences: readonly string[];
  readonly action: string;
  readonly button: string;
  /** A second way to agree: the name and value it posts, and its words. */
  readonly also?: readonly [name: string, words: string];
  /** The terms that are agreed on too. */
  readonly terms?: { readonly name: string; readonly lines: readonly string[] };
  readonly typed: ReadonlyMap<string, readonly string[]>;
  readonly asks: Asks;
  readonly problems: readonly Shown[];
}

export function ReadBack({ sentences, action, button, also, terms, typed, asks, problems }: ReadBackPage) {
  return (
    <>
      <ErrorSummary problems={problems} />
      <section class="head">
        <h1>Read it back</h1>
      </section>
      <form class="sheet readback" method="post" action={action} enctype="multipart/form-data" novalidate {...upgraded(action)}>
        {[...typed].flatMap(([name, values]) => values.map((value) => <input type="hidden" name={name} value={value} />))}
        {sentences.map((sentence) => (
          <p>{sentence}</p>
        ))}
        {terms && terms.lines.length > 0 && (
          <details>
            <summary>Our terms apply ({terms.name})</summary>
            <ol>
              {terms.lines.map((line) => (
                <li>{line}</li>
              ))}
            </ol>
          </details>
        )}
        <Secret asks={asks} form={{ problems }} />
        <div class="act">
          <button name="agreed" value="yes">
            {button}
          </button>
          {also && (
            <button class="plain" name="agreed" value={also[0]}>
              {also[1]}
            </button>
          )}
          <button class="plain" name="change" value="yes">
            Change something
          </button>
        </div>
      </form>
    </>
  );
}
