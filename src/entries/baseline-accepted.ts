// The owner accepts what one bench has lost at one kind of work as its baseline: what is finished later is judged against it, and teaches it nothing.
import { defineEntry, optional, ref, refuse, stated } from '../book/entry.ts';
import { fact } from '../book/facts.ts';
import { baselineName } from '../book/loss-charts.ts';
import { ownerByPassword } from '../book/may.ts';
import { FAMILY_WORDS } from '../book/metals.ts';
import { OPERATIONS } from '../book/usual-loss.ts';
import { choice, count } from '../book/values.ts';
import { FROM_USUAL_RATE } from '../reckoning/drift.ts';

export const baselineAccepted = defineEntry({
  type: 'baseline_accepted',
  version: 1,
  fields: {
    shop: ref('shop'),
    bench: optional(ref('place')),
    operation: stated(choice(OPERATIONS)),
    metal: stated(choice(FAMILY_WORDS)),
    jobs: stated(count(1_000_000, 1)),
    size: stated(count(Number.MAX_SAFE_INTEGER, 1)),
  },
  subject: 'shop',
  may: ownerByPassword,
  form: {
    title: 'Accept a baseline',
    labels: {
      shop: 'Shop',
      bench: 'Bench',
      operation: 'Work',
      metal: 'Metal',
      jobs: 'Jobs that it is learned from',
      size: 'Entries in the ledger when they were looked at',
    },
    button: 'Accept the baseline',
  },
  ownPage: true,
  decide({ shop, bench }, { operation, metal, jobs }) {
    if (shop.says[baselineName({ place: bench?.id ?? null, operation, family: metal })] !== undefined)
      return refuse(
        'baseline_accepted_before',
        'A baseline is accepted for this work already, and what is finished later is judged by it.',
      );
    if (jobs < FROM_USUAL_RATE)
      return refuse('baseline_too_few_jobs', `A baseline needs ${FROM_USUAL_RATE} jobs. Wait until so many are finished.`, 'jobs');
    return null;
  },
  facts: ({ shop, bench, operation, metal, size }) => [
    fact('policy', { of: shop, name: baselineName({ place: bench ?? null, operation, family: metal }), says: String(size) }),
  ],
  say: ({ operation, metal, jobs }) => `Baseline of loss accepted: ${OPERATIONS[operation]}, ${FAMILY_WORDS[metal]}, ${jobs} jobs`,
  tell: null,
});
