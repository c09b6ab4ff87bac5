import { Fragment as _Fragment, jsx as _jsx, jsxs as _jsxs } from 'hono/jsx/jsx-runtime';
// The first page of a new ledger: the shop, its owner, and the first balance.
import { upgraded } from './entry-form.js';
import { ErrorSummary } from './parts/errors.js';
import { FieldView } from './parts/field.js';

const text = { kind: 'text', max: 80, lines: false };
const secret = { ...text, secret: true };
const weight = { kind: 'decimal', unit: 'g' };
const choice = (options) => ({ kind: 'choice', options });
/** What is asked, in this order; nothing may be left out. */
const FIELDS = [
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
export function FirstRun({ typed, key, problems }) {
  const defaults = new Map([
    ['zone', [Intl.DateTimeFormat().resolvedOptions().timeZone]],
    ['country', ['GB']],
    ['currency', ['GBP']],
    ['staffing', ['alone']],
    ['balanceName', ['Bench balance']],
  ]);
  const form = { typed: new Map([...defaults, ...typed]), problems, balances: [], tares: [], things: {} };
  return _jsxs(_Fragment, {
    children: [
      _jsx(ErrorSummary, { problems: problems }),
      _jsxs('section', {
        class: 'head',
        children: [
          _jsx('h1', { children: 'Start the ledger' }),
          _jsx('p', {
            children:
              'What is written here is never edited or deleted, only corrected by a further entry. Encrypt this machine\u2019s disk before you begin: the files hold what customers tell you.',
          }),
          _jsxs('p', {
            children: [
              'Or play in a demo shop first: stop the program and start it with ',
              _jsx('code', { children: 'npm run demo' }),
              '. It opens an invented shop in a folder of its own; nothing of it comes into your ledger.',
            ],
          }),
        ],
      }),
      _jsxs('form', {
        class: 'sheet',
        method: 'post',
        action: '/first-run',
        novalidate: true,
        ...upgraded('/first-run'),
        children: [
          _jsx('input', { type: 'hidden', name: 'key', value: key }),
          FIELDS.map((field) => _jsx(FieldView, { ...field, optional: false, form: form })),
          _jsx('div', { class: 'act wide', children: _jsx('button', { children: 'Start the ledger' }) }),
        ],
      }),
    ],
  });
}
