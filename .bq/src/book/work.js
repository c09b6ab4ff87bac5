// The work that may be agreed, the states a weighing is taken in, and how a customer agrees: stored codes and their words.
export const WORK_STEPS = {
  check: 'check settings',
  clean: 'clean',
  polish: 'polish',
  solder: 'solder',
  laser: 'laser weld',
  'size-up': 'size up',
  'size-down': 'size down',
  'half-shank': 'half-shank',
  're-shank': 're-shank',
  're-tip': 're-tip claws',
  're-claw': 're-claw',
  're-head': 're-head',
  'take-out': 'take out stones',
  set: 'set stones',
  'supply-stone': 'supply a stone',
  remount: 'remount',
  remodel: 'remodel',
  restring: 'restring',
  clasp: 'new clasp',
  plate: 'plate',
  'strip-plating': 'strip plating',
  millgrain: 'millgrain',
  engrave: 'engrave',
  other: 'other',
};
export const PRICE_KINDS = { fixed: 'fixed price', estimate: 'estimate', free: 'free of charge' };
/** What becomes of metal that leaves a piece; under the last two it is the shop's. */
export const WASTE_TERMS = {
  customer: 'back to the customer',
  shop: 'stays with the shop',
  credit: 'stays with the shop, for credit',
};
/** The same as its owner is told. */
export const WASTE_TOLD = {
  customer: 'comes back to you',
  shop: 'stays with the shop',
  credit: 'stays with the shop, credited to you',
};
export const AGREED_BY = { signature: 'signature', phone: 'phone', message: 'message' };
export const WEIGHED_STATES = {
  'as received': 'as received',
  'cleaned and dry': 'cleaned and dry',
  'stones out': 'stones out',
  cut: 'cut',
  joined: 'joined',
  polished: 'polished',
  plated: 'plated',
  'stones set': 'stones set',
  finished: 'finished',
};
/** States of a weighing that says nothing of the metal and stones alone: of a piece cleaned and perhaps not dry, of stones wet or with glue. */
const WET = ['cleaned', 'wet', 'with glue'];
/** Whether a weighing says nothing of the thing alone, since something may have been on it or in it: one rule for every sum and paper. */
export const isWet = (state, { dry }) => WET.includes(state) || dry === 'no' || dry === 'unsure';
/** The words of stored codes, in their order, with a comma between. */
export const wordsOf = (words, codes) => codes.map((code) => words[code]).join(', ');
export const TOLD_BY = { phone: 'by phone', message: 'by message', person: 'in person', letter: 'by letter' };
export const ANSWERS = { agreed: 'agreed', declined: 'declined', thinking: 'will think about it', none: 'no answer' };
