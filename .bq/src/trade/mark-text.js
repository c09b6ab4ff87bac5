// A struck mark made plain, and which dated entries of a table fit it.
/** Karat letters run into what follows them, as in 14KGF or K18WG. */
const LETTERS_ON_A_KARAT = /\b(KT?|CT?)(?=(?:GFX?|RGP?|GEP?|GP|HGE|HGP|HEG|EP|EPNS|EPBM|ROLLED|OVERLAY|GOLD|WG|YG|PG)\b)/g;
/** The mark in one spelling, with the numbers that stand free in it (not those of 1/20). */
export function plainMark({ mark, country, era }) {
  const text = plainText(mark);
  const numbers = (text.match(/(?<![\d/.])\d+(?:\.\d+)?(?![\d/.])/g) ?? []).map(Number);
  return { text, country, era, numbers };
}
function plainText(mark) {
  return mark
    .toUpperCase()
    .replace(/([A-Z])\.(?=[A-Z\s]|$)/g, '$1')
    .replace(/\s*\/\s*/g, '/')
    .replace(/(?<!\d)0?\.(\d{2,3})\b/g, (_, digits) => digits.padEnd(3, '0'))
    .replace(/(\d)(?=[A-Z])|([A-Z])(?=\d)/g, '$1$2 ')
    .replace(LETTERS_ON_A_KARAT, '$1 ')
    .replace(/\bKT? ?P\b/g, 'KP')
    .replace(/\bPLATINUM\b|\bPT\b/g, 'PLAT')
    .replace(/\b(STERLING|STER|STG|COIN) SILVER\b/g, '$1')
    .replace(/\bPALLADIUM\b|\bPALL\b/g, 'PD')
    .replace(/\s+/g, ' ')
    .trim();
}
/** Entries that fit best: the country's own before general ones, the era's own before undated; more than one when they fit alike. `isForeign` lets a sign of one country be read where none was given. */
export function bestOf(entries, { country, era }, isForeign) {
  const scored = entries.flatMap((entry) => {
    if (entry.country && country && entry.country !== country) return [];
    if (entry.country && !country && !isForeign) return [];
    if (!overlaps(era, entry.era)) return [];
    const place = !entry.country ? 1 : country ? 2 : 0;
    return [{ entry, score: 2 * place + (Boolean(era) === Boolean(entry.era) ? 1 : 0) }];
  });
  const most = Math.max(...scored.map(({ score }) => score));
  return scored.filter(({ score }) => score === most).map(({ entry }) => entry);
}
/** Whether two eras share more than an end year; one that is not given shares with all. */
export function overlaps(a, b) {
  const [fromA, toA] = years(a);
  const [fromB, toB] = years(b);
  return Math.max(fromA, fromB) < Math.min(toA, toB);
}
function years(era) {
  const [, year, from, to] = /^(?:(\d{4})|(\d{4})?-(\d{4})?)$/.exec(era ?? '-') ?? [];
  if (year) return [Number(year), Number(year) + 1];
  return [Number(from ?? Number.NEGATIVE_INFINITY), Number(to ?? Number.POSITIVE_INFINITY)];
}
