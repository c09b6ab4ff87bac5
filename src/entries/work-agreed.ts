// What was agreed with the customer: the work, the price, the day, and what becomes of metal that leaves the piece.
import { defineEntry, optional, ref, refuse, stated } from '../book/entry.ts';
import { fact } from '../book/facts.ts';
import { given, identities } from '../book/given.ts';
import { anyStaff } from '../book/may.ts';
import { jobIsClosed, promiseIsPast } from '../book/refusals.ts';
import { choice, choices, day, money, text, tick } from '../book/values.ts';
import { AGREED_BY, PRICE_KINDS, WASTE_TERMS, WASTE_TOLD, WORK_STEPS, wordsOf } from '../book/work.ts';
import { formatCivilDate } from '../units/dates.ts';
import { formatMoney } from '../units/money.ts';

const OLD_PARTS = { customer: 'back to the customer', shop: 'not wanted back' } as const;

export const workAgreed = defineEntry({
  type: 'work_agreed',
  version: 1,
  fields: {
    job: ref('job'),
    steps: stated(choices(WORK_STEPS)),
    details: optional(stated(text(400))),
    priceKind: stated(choice(PRICE_KINDS)),
    price: optional(stated(money())),
    promise: stated(day()),
    dust: stated(choice(WASTE_TERMS)),
    cutMetal: stated(choice(WASTE_TERMS)),
    oldParts: stated(choice(OLD_PARTS)),
    heatConsent: optional(stated(tick())),
    markConsent: optional(stated(tick())),
    terms: stated(text(40)),
    agreedBy: stated(choice(AGREED_BY)),
  },
  subject: 'job',
  may: anyStaff,
  form: {
    title: 'Agree the work',
    labels: {
      job: 'Job',
      steps: 'Work',
      details: 'More about the work',
      priceKind: 'Kind of price',
      price: 'Price',
      promise: 'Ready by',
      dust: 'Dust and filings',
      cutMetal: 'Worn metal removed',
      oldParts: 'Old parts',
      heatConsent: 'The risk of heat was explained and accepted',
      markConsent: 'Marks or an inscription may go with the metal: accepted',
      terms: 'Terms, by version',
      agreedBy: 'How it was agreed',
    },
    cautions: ['unknown-stone-heat', 'old-solder', 'mark-in-cut', 'credit-as-purchase'],
    terms: 'terms',
  },
  decide({ job }, { steps, priceKind, price, promise }, { today }) {
    const closed = jobIsClosed(job);
    if (closed) return closed;
    if (steps.length === 0) return refuse('no_work_named', 'Name at least one thing that is to be done.', 'steps');
    if (priceKind === 'free' && price) return refuse('free_has_a_price', 'Work free of charge has no price. Take it out.', 'price');
    if (priceKind !== 'free' && !price) return refuse('price_missing', 'Give the price, or say that it is free of charge.', 'price');
    return promiseIsPast(promise, today);
  },
  facts: ({ job, steps, details, priceKind, price, promise, dust, cutMetal, oldParts }) => [
    fact('state', { of: job, is: 'agreed' }),
    fact('title', { of: job, part: 'cut metal', owner: cutMetal === 'customer' ? 'customer' : 'shop' }),
    fact('title', { of: job, part: 'dust', owner: dust === 'customer' ? 'customer' : 'shop' }),
    fact('promise', { of: job, by: promise }),
    ...given(price, ({ minor, currency }) => fact('money', { of: job, minor, currency, for: 'price' })),
    ...identities(job, { work: steps.join(' '), details, priceKind, dustTerms: dust, cutMetalTerms: cutMetal, oldParts }),
  ],
  say({ steps, priceKind, price, promise, cutMetal, dust, agreedBy }) {
    const cost = price ? `${formatMoney(price)}, ${PRICE_KINDS[priceKind]}` : PRICE_KINDS[priceKind];
    const waste = `worn metal removed: ${WASTE_TERMS[cutMetal]}; dust and filings: ${WASTE_TERMS[dust]}`;
    return `Agreed by ${AGREED_BY[agreedBy]}: ${wordsOf(WORK_STEPS, steps)}; ${cost}; ready by ${formatCivilDate(promise)}; ${waste}`;
  },
  tell: ({ steps, dust, cutMetal }) =>
    `Agreed: ${wordsOf(WORK_STEPS, steps)}; worn metal removed: ${WASTE_TOLD[cutMetal]}; dust and filings: ${WASTE_TOLD[dust]}`,
  next: ({ status, pieces }) => (status === 'open' && pieces > 0 ? 1 : null),
});
