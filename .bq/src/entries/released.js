// Something is handed over to leave the premises; until it is accepted it is in transit and the releaser answers.
import { defineEntry, optional, ref, refuse, sealed, stated } from '../book/entry.js';
import { fact } from '../book/facts.js';
import { identities } from '../book/given.js';
import { anyStaffByPin } from '../book/may.js';
import { atBench } from '../book/next.js';
import { onHold, thingIsGone } from '../book/refusals.js';
import { choice, count, day, money, text } from '../book/values.js';
import { after } from '../book/words.js';
import { formatCivilDate } from '../units/dates.js';

const PURPOSES = {
  setting: 'setting',
  plating: 'plating',
  engraving: 'engraving',
  polishing: 'polishing',
  other: 'other outwork',
  assay: 'assay office',
  refining: 'refining',
  delivery: 'delivery to the customer',
};
export const released = defineEntry({
  type: 'released',
  version: 1,
  fields: {
    of: ref('job', 'piece', 'stone', 'packet', 'lot'),
    person: optional(ref('person')),
    outworker: optional(sealed('shop', stated(text(120)))),
    purpose: stated(choice(PURPOSES)),
    count: optional(stated(count())),
    carrier: optional(stated(text(60))),
    consignment: optional(stated(text(60))),
    declared: optional(sealed('shop', stated(money()))),
    seal: optional(stated(text(40))),
    dueBack: optional(stated(day())),
  },
  subject: 'of',
  may: anyStaffByPin,
  form: {
    title: 'Release',
    labels: {
      of: 'What',
      person: 'To whom in the shop',
      outworker: 'Or to whom outside',
      purpose: 'For what',
      count: 'How many things',
      carrier: 'Carrier',
      consignment: 'Consignment number',
      declared: 'Value declared to the carrier',
      seal: 'Seal number',
      dueBack: 'Due back',
    },
    cautions: ['posting-cover', 'insurance-limits', 'refiner-title', 'protected-material'],
  },
  decide({ of }, { person, outworker }, { today }) {
    const refused = thingIsGone(of) ?? onHold(of, today, 'of');
    if (refused) return refused;
    if (person && outworker) return refuse('one_taker', 'Name somebody in the shop or somebody outside, not both.', 'outworker');
    return null;
  },
  facts: ({ of, person, purpose, count: things, carrier, consignment, seal, dueBack }) => [
    fact('custody', { of, is: 'offered to', holder: person ?? 'outside' }),
    ...identities(of, { purpose, released: things?.toString(), carrier, consignment, seal, dueBack }),
  ],
  say({ of, person, purpose, carrier, seal, dueBack }, name) {
    const how = `${after(', carrier ', carrier)}${after(', seal ', seal)}${after(', due back ', dueBack && formatCivilDate(dueBack))}`;
    return `Released: ${name(of)}${after(' to ', person && name(person))} for ${PURPOSES[purpose]}${how}`;
  },
  tell: ({ purpose }) => `Handed over to leave the shop: ${purpose === 'delivery' ? 'delivery to you' : PURPOSES[purpose]}`,
  next: atBench(21),
});
