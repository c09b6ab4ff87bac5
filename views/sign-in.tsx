// Sign-in: a name and a PIN.
import { ErrorSummary, FieldError, type Shown } from './parts/errors.tsx';

interface Props {
  readonly staff: readonly (readonly [id: string, name: string])[];
  readonly back: string;
  readonly problems: readonly Shown[];
  readonly chosen: string;
  /** Nobody has a PIN: sign-in was lost, or the owner has not been made. */
  readonly nobody: boolean;
  readonly begun: boolean;
}

export function SignIn({ staff, back, problems, chosen, nobody, begun }: Props) {
  if (!begun) {
    return (
      <section class="head">
        <h1>This ledger has not been started</h1>
        <p>
          Open the link that was printed where the program runs. It works once, within half an hour; start the program again for a new one.
        </p>
      </section>
    );
  }
  return (
    <>
      <ErrorSummary problems={problems} />
      <section class="head">
        <h1>Who is at the bench?</h1>
        {nobody && (
          <p class="again">
            Nobody can sign in: the PINs are gone. The entries are not. Run <code>node dist/src/cli.js owner-pin</code> on this machine to
            give the owner a new one.
          </p>
        )}
      </section>
      <form class="sheet narrow" method="post" action="/sign-in">
        <input type="hidden" name="back" value={back} />
        <fieldset class="field wide" id="f-person">
          <legend>Your name</legend>
          <FieldError name="person" problems={problems} />
          <div class="chips">
            {staff.map(([id, name]) => (
              <label>
                <input type="radio" name="person" value={id} checked={id === chosen} /> {name}
              </label>
            ))}
          </div>
        </fieldset>
        <div class="field wide">
          <label class="l" for="f-pin">
            PIN
          </label>
          <FieldError name="pin" problems={problems} />
          <input class="text" id="f-pin" name="pin" type="password" inputmode="numeric" autocomplete="off" />
        </div>
        <div class="act wide">
          <button>Sign in</button>
        </div>
      </form>
    </>
  );
}
