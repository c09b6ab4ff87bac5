// What was released is accepted: from now on the taker answers for it. The acceptance carries its evidence.
import { defineEntry, observed, optional, ref, refuse, stated } from '../book/entry.js';
import { fact } from '../book/facts.js';
import { identities } from '../book/given.js';
import { anyStaff } from '../book/may.js';
import { atBench } from '../book/next.js';
import { thingIsGone } from '../book/refusals.js';
import { choice, count, text } from '../book/values.js';
import { after } from '../book/words.js';

const SEALS = { intact: 'seal intact', broken: 'seal not intact', none: 'no seal' };
const EVIDENCE = { pin: 'own PIN', link: 'one-time link', sheet: 'signed sheet', carrier: 'carrier’s scan' };
export const accepted = defineEntry({
  type: 'accepted',
  version: 1,
  fields: {
    of: ref('job', 'piece', 'stone', 'packet', 'lot'),
    taker: optional(ref('person')),
    evidence: stated(choice(EVIDENCE)),
    seal: optional(observed(text(40))),
    sealState: observed(choice(SEALS)),
    count: optional(observed(count())),
  },
  subject: 'of',
  may: anyStaff,
  form: {
    title: 'Accept',
    labels: {
      of: 'What',
      taker: 'Who takes it, in the shop',
      evidence: 'By what',
      seal: 'Seal number, as read',
      sealState: 'Seal',
      count: 'How many things',
    },
    hints: { taker: 'Leave empty when somebody outside takes it.' },
  },
  decide({ of }, { taker, seal, sealState, count: here }, { by, witness }) {
    const gone = thingIsGone(of);
    if (gone) return gone;
    if (taker !== undefined && taker !== by && taker !== witness) {
      return refuse('not_the_taker', 'Only the one who takes it can accept it: sign in as them, or have them give their PIN.', 'taker');
    }
    const { released, seal: sealedWith } = of.says;
    if (here !== undefined && released !== undefined && here !== Number(released)) {
      const each = 'Accept what is here one by one, and note what is missing.';
      return refuse('count_differs', `${released} were handed over and ${here} are here. Count again. ${each}`, 'count');
    }
    if (sealState !== 'broken' && seal !== undefined && sealedWith !== undefined && seal !== sealedWith) {
      return refuse(
        'another_seal',
        `It was sealed with ${sealedWith}. Read the seal again; if it is another, say that it is not intact.`,
        'seal',
      );
    }
    if (sealState === 'broken' && here === undefined) {
      return refuse('opened_not_counted', 'The seal is not intact. Open it now, count what is in it and write the count.', 'count');
    }
    return null;
  },
  facts: ({ of, taker, seal, sealState, count: things }) => [
    fact('custody', { of, is: 'with', holder: taker ?? 'outside' }),
    ...identities(of, { sealIn: seal, sealState, accepted: things?.toString() }),
  ],
  say: ({ of, taker, evidence, seal, sealState }, name) =>
    `Accepted: ${name(of)} by ${taker ? name(taker) : 'somebody outside'}, ${EVIDENCE[evidence]}, ${SEALS[sealState]}${after(' ', seal)}`,
  tell: () => 'Taken over',
  next: atBench(22),
});
