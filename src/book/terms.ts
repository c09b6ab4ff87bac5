// The terms a shop begins with, in our own plain words, until it sets its own; and how terms are named on papers.

/** To be read with a lawyer of the country before they are relied on. The sentences on goods that are not collected follow the notice of UK law (Torts (Interference with Goods) Act 1977, sections 12 and 13, from memory); US law differs by state. */
export const ASK_A_LAWYER = 'These are words to begin with. Ask your own lawyer before you rely on them.';

const BOTH = [
  'Work, price and day are those on this slip. If we find that more is needed, we ask you before we do it.',
  'Old repairs, worn metal and stones can fail under heat or pressure, however careful we are. We tell you what we see before we begin.',
  'Metal and parts that come out of your piece go where this slip says.',
  'Weights are read in front of you on our balance. A value you state is for safe keeping only and is no valuation.',
  'Bring this slip to collect. Without it we ask for something that shows who you are.',
] as const;
const NOT_COLLECTED = {
  GB: 'We tell you when it is ready. If you do not come, we keep it safe and write to you again. We may sell it only after the written notice that the law asks for, and what it brings beyond what you owe us is yours.',
  US: 'We tell you when it is ready. If you do not come, we keep it safe and write to you again. We may sell it only as the law of our state allows, after notice in writing, and what it brings beyond what you owe us is yours.',
  other:
    'We tell you when it is ready. If you do not come, we keep it safe and write to you again. We may sell it only as the law allows, after notice in writing, and what it brings beyond what you owe us is yours.',
} as const;
const LAST = 'If something is not right, tell us. Your rights by law stay as they are.';

/** The text a shop of that country begins with, one term a line. */
export const firstTerms = (country: string): string =>
  [...BOTH, country === 'GB' || country === 'US' ? NOT_COLLECTED[country] : NOT_COLLECTED.other, LAST].join('\n');

/** Of the digest of a text, as many digits as name it on paper and in an agreement. */
export const termsName = (digest: string): string => digest.slice(0, 12);

/** What an agreement names where the shop has set no terms. */
export const NO_TERMS = 'none set';
