// A ring with three stones as the web tests need it: taken in, agreed, and whatever is written on it after.
import { bagCode, type Ref } from '../../src/units/ids.ts';
import { line, type Shop } from '../shop.ts';

export interface RingJob {
  readonly customer: Ref<'customer'>;
  readonly job: Ref<'job'>;
  readonly bag: Ref<'bag'>;
  readonly piece: Ref<'piece'>;
}

/** Takes a ring of 6.82 g in and agrees on work, promised for that day. */
export async function takeRingIn(
  shop: Shop,
  { name = 'Ruth Abara', phone = '07700 900123', promise = '2026-12-08', description = 'Three-stone ring', grams = '6.82' } = {},
): Promise<RingJob> {
  const [customer, job, piece] = [shop.newRef('customer'), shop.newRef('job'), shop.newRef('piece')];
  const bag = shop.newBag();
  await shop.write(
    line('customer_met', { customer, name, phone }),
    line('job_opened', { job, bag, customer, broughtBy: 'customer', owner: 'customer', channel: 'counter' }),
    line('piece_received', {
      job,
      piece,
      kind: 'ring',
      description,
      parts: [{ part: 'shank', metal: 'gold-750' }],
      stones: 3,
      weight: shop.grams(grams),
    }),
    line('work_agreed', {
      job,
      steps: ['re-tip'],
      priceKind: 'fixed',
      price: { minor: 8500, currency: 'GBP' },
      promise,
      dust: 'shop',
      cutMetal: 'customer',
      oldParts: 'customer',
      terms: '2026-1',
      agreedBy: 'signature',
    }),
  );
  return { customer, job, bag, piece };
}

/** A safe with a tray in it. */
export async function nameSafe(shop: Shop): Promise<{ readonly safe: Ref<'place'>; readonly tray: Ref<'place'> }> {
  const [safe, tray] = [shop.newRef('place'), shop.newRef('place')];
  await shop.write(
    line('place_named', { place: safe, name: 'Old safe', kind: 'safe' }),
    line('container_named', { container: tray, name: 'Blue tray', kind: 'tray', inside: safe }),
  );
  return { safe, tray };
}

/** A ring of 6.82 g polished and finished, at 6.79 g where nothing else is said. */
export async function finishPolished(shop: Shop, out = '6.79'): Promise<Ref<'job'>> {
  const [job, piece] = [shop.newRef('job'), shop.newRef('piece')];
  const terms = {
    priceKind: 'free',
    promise: '2027-12-08',
    dust: 'shop',
    cutMetal: 'shop',
    oldParts: 'shop',
    terms: '1',
    agreedBy: 'signature',
  };
  await shop.write(
    line('job_opened', { job, bag: bagCode(shop.random(5), 5), broughtBy: 'customer', owner: 'customer', channel: 'counter' }),
    line('piece_received', {
      ...{ job, piece, kind: 'ring', description: 'Band', stones: 0, weight: shop.grams('6.82') },
      parts: [{ part: 'shank', metal: 'gold-750' }],
    }),
    line('work_agreed', { job, steps: ['polish'], ...terms }),
    line('taken', { of: job }),
    line('piece_weighed', { piece, state: 'finished', weight: shop.grams(out) }),
    line('piece_checked', { piece, stones: 0, seats: 'none', marks: 'readable' }),
    line('work_finished', { job }),
  );
  return job;
}
