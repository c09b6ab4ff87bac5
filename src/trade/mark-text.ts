// A struck mark made plain, and which dated entries of a table fit it.

/** The mark as written; country in two letters (SU for Soviet) and era in years ("1838-1973", "-1927") where known. */
export interface Mark {
  readonly mark: string;
  readonly country?: string;
  readonly era?: string;
}
/** A mark made plain: capitals, letters and figures apart ("K 18 GP"), ".75" as 750. */
export interface Plain {
  readonly text: string;
  readonly country: string | undefined;
  readonly era: string | undefined;
  readonly numbers: readonly number[];
}

/** Karat letters run into what follows them, as in 14KGF or K18WG. */
const LETTERS_ON_A_KARAT = /\b(KT?|CT?)(?=(?:GFX?|RGP?|GEP?|GP|HGE|HGP|HEG|EP|EPNS|EPBM|ROLLED|OVERLAY|GOLD|WG|YG|PG)\b)/g;

/** The mark in one spelling, with the numbers that stand free in it (not those of 1/20). */
export function plainMark({ mark, country, era }: Mark): Plain {
  const text = plainText(mark);
  const numbers = (text.match(/(?<![\d/.])\d+(?:\.\d+)?(?![\d/.])/g) ?? []).map(Number);
  return { text, country, era, numbers };
}

function plainText(mark: string): string {
  return mark
    .toUpperCase()
    .replace(/([A-Z])\.(?=[A-Z\s]|$)/g, '$1')
    .replace(/\s*\/\s*/g, '/')
    .replace(/(?<!\d)0?\.(\d{2,3})\b/g, (_, digits: string) => digits.padEnd(3, '0'))
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
export function bestOf<T extends { readonly country?: string; readonly era?: string }>(
  entries: readonly T[],
  { country, era }: Plain,
  isForeign: boolean,
): readonly T[] {
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
export function overlaps(a: string | undefined, b: string | undefined): boolean {
  const [fromA, toA] = years(a);
  const [fromB, toB] = years(b);
  return Math.max(fromA, fromB) < Math.min(toA, toB);
}

function years(era: string | undefined): readonly [number, number] {
  const [, year, from, to] = /^(?:(\d{4})|(\d{4})?-(\d{4})?)$/.exec(era ?? '-') ?? [];
  if (year) return [Number(year), Number(year) + 1];
  return [Number(from ?? Number.NEGATIVE_INFINITY), Number(to ?? Number.POSITIVE_INFINITY)];
}
