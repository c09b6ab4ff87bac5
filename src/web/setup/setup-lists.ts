// The lists of Setup: what there is, what to do with each next, and how to add to it.
import type { SetupRow, SetupSection } from '../../../views/setup.tsx';
import { METAL_WORDS, type MetalCode } from '../../book/metals.ts';
import type { Thing } from '../../ledger/thing.ts';
import type { Ref } from '../../units/ids.ts';
import { formatMassWithUnit, massNg } from '../../units/mass.ts';
import { formatMoney, type Money } from '../../units/money.ts';
import { wordsFor } from '../job/words.ts';
import { type Policy, thingsOf, type Web } from '../session/context.ts';

type Link = readonly [href: string, words: string];

const metalWords = ({ says }: Thing) => METAL_WORDS[says.metal as MetalCode] ?? '';
/** Words for places, by their names in the ledger. */
type Names = ReadonlyMap<string, string>;
interface Listed extends Omit<SetupSection, 'rows'> {
  /** What stands beside one of them. */
  readonly more: (thing: Thing, nameOf: Names) => string;
  readonly next: (thing: Thing) => Link | null;
}
/** Things that are listed with what is done with each next. */
const LISTED = {
  place: {
    title: 'Places, trays and boxes',
    none: 'No place is named yet. Begin with the safe.',
    add: [
      ['/write/place_named', 'Name a place'],
      ['/write/container_named', 'Name a tray or box'],
    ],
    more: placeWords,
    next: () => null,
  },
  balance: {
    title: 'Balances',
    none: 'No balance yet: nothing can be weighed.',
    add: [['/write/balance_put_in_service', 'Put a balance in service']],
    more: ({ balance }) => `in ${balance?.unit ?? 'g'}`,
    next: ({ id }) => [`/balances/${id}/check`, 'Check it'],
  },
  lot: {
    title: 'Scrap lots',
    none: 'No open lot. Worn metal that is cut away needs one, or a packet.',
    add: [['/write/lot_opened', 'Open a lot']],
    more: (lot) => `${metalWords(lot)}, ${lot.status ?? 'open'}`,
    next: () => null,
  },
  stock: {
    title: 'Stock',
    none: 'No stock yet.',
    add: [['/write/metal_received', 'Metal comes in']],
    more: metalWords,
    next: ({ id }) => [`/write/stock_counted?stock=${id}`, 'Weigh it whole'],
  },
  skin: {
    title: 'Bench skins',
    none: 'No skin yet. It begins with its first lemel.',
    add: [['/write/lemel_gathered', 'Gather lemel']],
    more: metalWords,
    next: ({ id }) => [`/write/skin_emptied?skin=${id}`, 'Empty it'],
  },
} as const satisfies Readonly<Record<string, Listed>>;

/** Every list, in the order in which a shop begins. */
export async function sectionsOf(web: Web, policy: Policy, people: readonly Thing[]): Promise<readonly SetupSection[]> {
  const places = await thingsOf(web, 'place');
  const nameOf = new Map(places.map((place) => [place.id, wordsFor(web, place)]));
  const listed = async (kind: keyof typeof LISTED): Promise<SetupSection> => {
    const { more, next, ...section }: Listed = LISTED[kind];
    const things = kind === 'place' ? places : await thingsOf(web, kind);
    const rows = things.map((thing) => ({
      words: wordsFor(web, thing),
      href: `/things/${thing.id}`,
      more: more(thing, nameOf),
      next: next(thing),
    }));
    return { ...section, rows };
  };
  return [
    { title: 'People', none: 'Nobody yet.', add: [['/write/person_joined', 'Somebody joins']], rows: await peopleRows(web, people) },
    await listed('place'),
    await listed('balance'),
    {
      title: 'Tares',
      none: 'Nothing listed yet. A bag, a tag and a dish save a sum at every weighing.',
      add: [['/write/tare_listed', 'List a tare']],
      rows: [...policy.tares].map(([words, ng]) => ({ words, href: null, more: formatMassWithUnit(massNg(ng), 'g', 2), next: null })),
    },
    await listed('lot'),
    await listed('stock'),
    await listed('skin'),
    {
      title: 'How the shop works',
      none: '',
      add: [
        ['/write/policy_set', 'Change how the shop works'],
        ['/write/shop_described', 'Address and phone'],
        ['/setup/terms', 'Terms'],
      ],
      rows: policyRows(policy),
    },
  ];
}

const peopleRows = (web: Web, people: readonly Thing[]): Promise<readonly SetupRow[]> =>
  Promise.all(
    people.map(async (person) => {
      const hasPin = await web.access.hasCredential(person.id as Ref<'person'>);
      const next: Link | null = hasPin ? null : ['#f-pin', 'Give a PIN'];
      return { words: wordsFor(web, person), href: null, more: `${person.role ?? ''}${hasPin ? '' : ', no PIN yet'}`, next };
    }),
  );

function placeWords({ says, money }: Thing, nameOf: Names): string {
  const limit = money['insurer limit'];
  const parts = [
    says.kind,
    says.inside && `in ${nameOf.get(says.inside) ?? ''}`,
    limit && `insurer’s limit ${formatMoney(limit as Money)}`,
  ];
  return parts.filter(Boolean).join(', ');
}

const policyRows = ({ name, country, currency, zone, alone, words, reach, terms }: Policy): readonly SetupRow[] =>
  (
    [
      ['Shop', name],
      ['Country', country === 'other' ? 'elsewhere' : country],
      ['Currency', currency],
      ['Time zone', zone],
      ['Who works here', alone ? 'one alone' : 'two or more'],
      ['Words', words === 'us' ? 'US' : 'UK'],
      ['Address and phone', reach.join(', ') || 'not said: slips and letters go without'],
      ['Terms', terms ?? 'none set: slips and letters go without'],
    ] as const
  ).map(([label, more]) => ({ words: label, href: null, more, next: null }));
