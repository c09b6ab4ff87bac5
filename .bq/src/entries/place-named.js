// A place where things are kept, with the insurer's limit for what may lie there.
import { begins, defineEntry, optional, stated } from '../book/entry.js';
import { fact } from '../book/facts.js';
import { given, identities } from '../book/given.js';
import { anyStaff, ownerByPassword } from '../book/may.js';
import { choice, money, text } from '../book/values.js';
import { formatMoney } from '../units/money.js';

const PLACE_KINDS = {
  safe: 'safe',
  tray: 'tray',
  bench: 'bench',
  counter: 'counter',
  window: 'window',
  outside: 'off the premises',
  other: 'other',
};
export const placeNamed = defineEntry({
  type: 'place_named',
  version: 1,
  fields: {
    place: begins('place'),
    name: stated(text(60)),
    kind: stated(choice(PLACE_KINDS)),
    limit: optional(stated(money())),
  },
  subject: 'place',
  may: (_view, { limit }) => (limit === undefined ? anyStaff : ownerByPassword),
  form: {
    title: 'Name a place',
    labels: { place: 'Place', name: 'Name', kind: 'What kind of place', limit: 'Insurer’s limit here' },
    cautions: ['insurance-limits'],
  },
  decide: () => null,
  facts: ({ place, name, kind, limit }) => [
    ...identities(place, { name, kind }),
    ...given(limit, ({ minor, currency }) => fact('money', { of: place, minor, currency, for: 'insurer limit' })),
  ],
  say: ({ name, kind, limit }) => `Place named: ${name} (${PLACE_KINDS[kind]})${limit ? `, insurer’s limit ${formatMoney(limit)}` : ''}`,
  tell: null,
});
