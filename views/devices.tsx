// The screens of the shop, a new one's link as a code for its camera, and the page on which that screen is enrolled.
import type { Control } from '../src/book/values.ts';
import { Secret } from './entry-form.tsx';
import { ErrorSummary, FieldError, type Shown } from './parts/errors.tsx';
import { FieldView } from './parts/field.tsx';
import { Qr } from './parts/qr.tsx';

interface Props {
  readonly devices: readonly { readonly id: string; readonly name: string; readonly since: string }[];
  readonly onLan: boolean;
  readonly fields: readonly { readonly name: string; readonly label: string; readonly control: Control; readonly optional: boolean }[];
  readonly typed: ReadonlyMap<string, readonly string[]>;
  readonly problems: readonly Shown[];
  readonly link: { readonly href: string; readonly name: string } | null;
}

export function DevicesView({ devices, onLan, fields, typed, problems, link }: Props) {
  return (
    <>
      <ErrorSummary problems={problems} title="Not done yet" />
      <section class="head">
        <h1>Screens</h1>
        {!onLan && (
          <p>
            The program serves this PC alone. For tablets in the shop start it with <code>LEMEL_MODE=lan</code> and{' '}
            <code>LEMEL_ADDRESS</code>, the address of this machine.
          </p>
        )}
      </section>
      {link && (
        <section class="enrol">
          <h2>Open this on {link.name}</h2>
          <Qr text={link.href} label={`Code of the link that enrols ${link.name}`} />
          <p>
            <a href={link.href}>{link.href}</a>
          </p>
          <p class="soft">
            It works once, within half an hour. The tablet will say that it does not know the certificate: it is the shop’s own.
          </p>
        </section>
      )}
      {(onLan || devices.length > 0) && (
        <form class="sheet" method="post" action="/devices" novalidate>
          {devices.length > 0 && (
            <fieldset class="field wide" id="f-device">
              <legend>In use</legend>
              <FieldError name="device" problems={problems} />
              <div class="chips">
                {devices.map(({ id, name, since }) => (
                  <label>
                    <input type="radio" name="device" value={id} /> {name} <small>since {since}</small>
                  </label>
                ))}
              </div>
            </fieldset>
          )}
          {onLan && fields.map((field) => <FieldView {...field} form={{ typed, problems, balances: [], tares: [], things: {} }} />)}
          <Secret asks="password" form={{ problems }} />
          <div class="act wide">
            {onLan && <button>Make a link for a new screen</button>}
            {devices.length > 0 && (
              <button class="plain" formaction="/devices/end">
                Withdraw the chosen screen
              </button>
            )}
          </div>
        </form>
      )}
    </>
  );
}

export function EnrolView({ link, name }: { readonly link: string; readonly name: string }) {
  return (
    <form class="sheet narrow" method="post" action="/enrol">
      <h1 class="wide">Enrol this screen as “{name}”?</h1>
      <p class="wide soft">Whoever stands here can then sign in with their own PIN.</p>
      <input type="hidden" name="key" value={link} />
      <div class="act wide">
        <button>Enrol this screen</button>
      </div>
    </form>
  );
}
