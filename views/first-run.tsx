// The first page of a new ledger: the shop, its owner, and the first balance.
import { upgraded } from './entry-form.tsx';
import { ErrorSummary, type Shown } from './parts/errors.tsx';
import { FieldView, type FormState } from './parts/field.tsx';

const CURRENCIES = { GBP: '£', USD: '$', EUR: '€', CHF: 'CHF', CAD: 'CAD', AUD: 'AUD', NZD: 'NZD', JPY: 'JPY' };
const text = { kind: 'text', max: 80, lines: false } as const;
const secret = { ...text, secret: true } as const;

interface Props {
  readonly typed: ReadonlyMap<string, readonly string[]>;
  readonly key: string;
  readonly problems: readonly Shown[];
}

export function FirstRun({ typed, key, problems }: Props) {
  const defaults = new Map([
    ['zone', [Intl.DateTimeFormat().resolvedOptions().timeZone]],
    ['country', ['GB']],
    ['currency', ['GBP']],
    ['staffing', ['alone']],
    ['balanceName', ['Bench balance']],
  ]);
  const form: FormState = { typed: new Map([...defaults, ...typed]), problems, balances: [], tares: [], things: {} };
  const choice = (options: Readonly<Record<string, string>>) => ({ kind: 'choice', options }) as const;
  return (
    <>
      <ErrorSummary problems={problems} />
      <section class="head">
        <h1>Start the ledger</h1>
        <p>
          What is written here is never edited or deleted, only corrected by a further entry. Encrypt this machine’s disk before you begin:
          the files hold what customers tell you.
        </p>
        <p>
          Or play in a demo shop first: stop the program and start it with <code>npm run demo</code>. It opens an invented shop in a folder
          of its own; nothing of it comes into your ledger.
        </p>
      </section>
      <form class="sheet" method="post" action="/first-run" novalidate {...upgraded('/first-run')}>
        <input type="hidden" name="key" value={key} />
        <FieldView name="shopName" label="Name of the shop" optional={false} control={text} form={form} />
        <FieldView name="ownerName" label="Your name" optional={false} control={text} form={form} />
        <FieldView name="pin" label="Your PIN" hint="4 to 8 figures; it opens the bench." optional={false} control={secret} form={form} />
        <FieldView
          name="password"
          label="Your password"
          hint="At least 10 characters, for what only the owner does."
          optional={false}
          control={secret}
          form={form}
        />
        <FieldView
          name="country"
          label="Where is the shop?"
          optional={false}
          control={choice({ GB: 'United Kingdom', US: 'United States', other: 'Elsewhere' })}
          form={form}
        />
        <FieldView name="currency" label="Currency" optional={false} control={choice(CURRENCIES)} form={form} />
        <FieldView
          name="zone"
          label="Time zone"
          hint="Like Europe/London or America/New_York."
          optional={false}
          control={text}
          form={form}
        />
        <FieldView
          name="staffing"
          label="Who works here?"
          optional={false}
          control={choice({ alone: 'I work alone', two: 'Two or more' })}
          form={form}
        />
        <FieldView name="balanceName" label="Your balance, as you call it" optional={false} control={text} form={form} />
        <FieldView
          name="largest"
          label="Largest load"
          hint="On its plate: Max."
          optional={false}
          control={{ kind: 'decimal', unit: 'g' }}
          form={form}
        />
        <FieldView
          name="step"
          label="Step it shows"
          hint="On its plate: d."
          optional={false}
          control={{ kind: 'decimal', unit: 'g' }}
          form={form}
        />
        <div class="act wide">
          <button>Start the ledger</button>
        </div>
      </form>
    </>
  );
}
