// The first page of a new ledger: the shop, its owner, and the first balance.
import { upgraded } from './entry-form.tsx';
import { ErrorSummary, type Shown } from './parts/errors.tsx';
import { FieldView, type FormState } from './parts/field.tsx';
import type { FieldProps } from './parts/labels.tsx';

const text = { kind: 'text', max: 80, lines: false } as const;
const secret = { ...text, secret: true } as const;
const weight = { kind: 'decimal', unit: 'g' } as const;
const choice = (options: Readonly<Record<string, string>>) => ({ kind: 'choice', options }) as const;

/** What is asked, in this order; nothing may be left out. */
const FIELDS: readonly Pick<FieldProps, 'name' | 'label' | 'hint' | 'control'>[] = [
  { name: 'shopName', label: 'Name of the shop', control: text },
  { name: 'ownerName', label: 'Your name', control: text },
  { name: 'pin', label: 'Your PIN', hint: '4 to 8 figures; it opens the bench.', control: secret },
  { name: 'password', label: 'Your password', hint: 'At least 10 characters, for what only the owner does.', control: secret },
  { name: 'country', label: 'Where is the shop?', control: choice({ GB: 'United Kingdom', US: 'United States', other: 'Elsewhere' }) },
  {
    name: 'currency',
    label: 'Currency',
    control: choice({ GBP: '£', USD: '$', EUR: '€', CHF: 'CHF', CAD: 'CAD', AUD: 'AUD', NZD: 'NZD', JPY: 'JPY' }),
  },
  { name: 'zone', label: 'Time zone', hint: 'Like Europe/London or America/New_York.', control: text },
  { name: 'staffing', label: 'Who works here?', control: choice({ alone: 'I work alone', two: 'Two or more' }) },
  { name: 'balanceName', label: 'Your balance, as you call it', control: text },
  { name: 'largest', label: 'Largest load', hint: 'On its plate: Max.', control: weight },
  { name: 'step', label: 'Step it shows', hint: 'On its plate: d.', control: weight },
];

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
        {FIELDS.map((field) => (
          <FieldView {...field} optional={false} form={form} />
        ))}
        <div class="act wide">
          <button>Start the ledger</button>
        </div>
      </form>
    </>
  );
}
