// How the shop works: its zone, country, currency, staffing and words. Only what is given changes.
import { defineEntry, optional, ref, refuse, stated } from '../book/entry.ts';
import { fact } from '../book/facts.ts';
import { given } from '../book/given.ts';
import { ownerByPassword } from '../book/may.ts';
import { choice, text } from '../book/values.ts';
import { CURRENCIES, type Money } from '../units/money.ts';

const COUNTRIES = { GB: 'United Kingdom', US: 'United States', other: 'elsewhere' } as const;
const STAFFING = { alone: 'one person', two: 'two or more' } as const;
const WORDS = { uk: 'UK words', us: 'US words' } as const;
const MONEY = Object.fromEntries(CURRENCIES.map((code) => [code, code])) as Record<Money['currency'], string>;

/** Whether the time zone database knows it; one that is not given is none that it does not know. */
function isZone(zone: string | undefined): boolean {
  try {
    return new Intl.DateTimeFormat('en', { timeZone: zone }) !== null;
  } catch {
    return false;
  }
}

export const policySet = defineEntry({
  type: 'policy_set',
  version: 1,
  fields: {
    shop: ref('shop'),
    zone: optional(stated(text(60))),
    country: optional(stated(choice(COUNTRIES))),
    currency: optional(stated(choice(MONEY))),
    staffing: optional(stated(choice(STAFFING))),
    words: optional(stated(choice(WORDS))),
  },
  subject: 'shop',
  may: ownerByPassword,
  form: {
    title: 'How the shop works',
    labels: {
      shop: 'Shop',
      zone: 'Time zone',
      country: 'Country',
      currency: 'Currency',
      staffing: 'Who works here',
      words: 'Words on screen and paper',
    },
    hints: { zone: 'For example Europe/London or America/New_York.' },
  },
  decide(_view, { shop: _shop, ...said }) {
    if (Object.values(said).every((value) => value === undefined)) return refuse('nothing_said', 'Fill in what changes.');
    if (!isZone(said.zone)) {
      return refuse('zone_not_known', 'No such time zone. Write it like Europe/London.', 'zone');
    }
    return null;
  },
  facts: ({ shop, zone, country, currency, staffing, words }) =>
    Object.entries({ zone, country, currency, staffing, words }).flatMap(([name, says]) =>
      given(says, (words) => fact('policy', { of: shop, name, says: words })),
    ),
  say({ zone, country, currency, staffing, words }) {
    const said = [zone, country && COUNTRIES[country], currency, staffing && STAFFING[staffing], words && WORDS[words]];
    return ['Shop policy set', ...said.filter((one) => one !== undefined)].join(', ');
  },
  tell: null,
});
