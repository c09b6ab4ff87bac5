// Setup: its lists, each with how to add to it, and the form for a PIN.
import { Secret } from './entry-form.tsx';
import { ErrorSummary, FieldError, type Shown } from './parts/errors.tsx';

type Link = readonly [href: string, words: string];
export interface SetupRow {
  readonly words: string;
  readonly href: string | null;
  readonly more: string;
  /** What is most likely to be done with it next. */
  readonly next: Link | null;
}
export interface SetupSection {
  readonly title: string;
  readonly rows: readonly SetupRow[];
  readonly none: string;
  readonly add: readonly Link[];
}

interface Props {
  readonly sections: readonly SetupSection[];
  readonly people: readonly (readonly [id: string, name: string])[];
  readonly problems: readonly Shown[];
}

export function SetupView({ sections, people, problems }: Props) {
  return (
    <>
      <ErrorSummary problems={problems} />
      <section class="head">
        <h1>Setup</h1>
        <p class="ways">
          <a href="/devices">Screens</a>
          <a href="/setup/recovery-sheet">Recovery sheet</a>
          <a href="/trail">Check the log</a>
        </p>
      </section>
      <div class="setup">
        {sections.map((section) => (
          <Section {...section} />
        ))}
      </div>
      <section class="block">
        <h2>PINs and passwords</h2>
        <form class="sheet narrow" method="post" action="/setup/pin">
          <fieldset class="field wide" id="f-person">
            <legend>Whose</legend>
            <FieldError name="person" problems={problems} />
            <div class="chips">
              {people.map(([id, name]) => (
                <label>
                  <input type="radio" name="person" value={id} /> {name}
                </label>
              ))}
            </div>
          </fieldset>
          <div class="field wide">
            <label class="l" for="f-pin">
              New PIN
            </label>
            <FieldError name="pin" problems={problems} />
            <input class="text" id="f-pin" name="pin" type="password" inputmode="numeric" autocomplete="off" />
          </div>
          <div class="field wide">
            <label class="l" for="f-newPassword">
              New password, for an owner
            </label>
            <FieldError name="newPassword" problems={problems} />
            <input class="text" id="f-newPassword" name="newPassword" type="password" autocomplete="new-password" />
          </div>
          <Secret asks="password" form={{ problems }} />
          <p class="soft wide">Whoever gets a new one is signed out everywhere at once.</p>
          <div class="act wide">
            <button>Set it</button>
            <button class="plain" formaction="/setup/tries">
              Let them try again after wrong PINs
            </button>
          </div>
        </form>
      </section>
    </>
  );
}

function Section({ title, rows, none, add }: SetupSection) {
  return (
    <section class="block">
      <h2>{title}</h2>
      {rows.length === 0 && <p class="soft">{none}</p>}
      <ul class="listed-rows">
        {rows.map(({ words, href, more, next }) => (
          <li>
            <span>
              {href ? <a href={href}>{words}</a> : words} <small>{more}</small>
            </span>
            {next && (
              <a href={next[0]}>
                {next[1]}
                <span class="sr"> ({words})</span>
              </a>
            )}
          </li>
        ))}
      </ul>
      <p class="ways">
        {add.map(([href, words]) => (
          <a href={href}>{words}</a>
        ))}
      </p>
    </section>
  );
}

interface PasswordFirstProps {
  readonly title: string;
  readonly say: string;
  readonly action: string;
  readonly button: string;
  readonly problems: readonly Shown[];
}

/** A page that is shown only once the owner's password is typed. */
export function PasswordFirst({ title, say, action, button, problems }: PasswordFirstProps) {
  return (
    <>
      <ErrorSummary problems={problems} />
      <section class="head">
        <h1>{title}</h1>
        <p>{say}</p>
      </section>
      <form class="sheet narrow" method="post" action={action}>
        <Secret asks="password" form={{ problems }} />
        <div class="act wide">
          <button>{button}</button>
        </div>
      </form>
    </>
  );
}
