// Setup, and the sheet that brings the signing seed back.
import type { SetupSection } from '../src/web/setup/setup-lists.ts';
import { ErrorSummary, FieldError, type Shown } from './parts/errors.tsx';

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
        <h2>Give somebody a PIN</h2>
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
          <div class="act wide">
            <button>Set the PIN</button>
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

interface Sheet {
  readonly shop: string;
  readonly log: string;
  readonly seed: string;
  readonly vkey: string;
  readonly fingerprint: string;
}

export function RecoverySheet({ shop, log, seed, vkey, fingerprint }: Sheet) {
  return (
    <section class="head paper">
      <h1>Recovery sheet</h1>
      <p>
        Print this and lock it away from this machine. Whoever has the seed can sign as {shop}; without it and the files nobody can go on
        signing this ledger.
      </p>
      <dl class="facts">
        <div>
          <dt>Shop</dt>
          <dd>{shop}</dd>
        </div>
        <div>
          <dt>Ledger</dt>
          <dd>
            <code>{log}</code>
          </dd>
        </div>
        <div>
          <dt>Signing seed</dt>
          <dd>
            <code>{seed.match(/.{1,8}/g)?.join(' ')}</code>
          </dd>
        </div>
        <div>
          <dt>Public key</dt>
          <dd>
            <code>{vkey}</code>
          </dd>
        </div>
        <div>
          <dt>Its fingerprint, SHA-256</dt>
          <dd>
            <code>{fingerprint.match(/.{1,8}/g)?.join(' ')}</code>
          </dd>
        </div>
      </dl>
      <a class="button" href="/">
        It is printed: to the counter
      </a>
    </section>
  );
}
