// Reads a struck mark of fineness. It tells what somebody struck and not what an assay found; what is not known is said so.
import {
  BARE_NUMBERS,
  CARAT_STANDARDS,
  CARATS_OF,
  COUNTRY_NUMBERS,
  DINHEIROS,
  METAL_SIGNS,
  NAMED_MARKS,
  PLATING_MARKS,
  ZOLOTNIK,
} from './mark-table.js';
import { bestOf, overlaps, plainMark } from './mark-text.js';

const UNKNOWN = { metal: null, permille: null, words: 'mark not known: photograph it, test the metal', sources: [] };
/** The metal and permille a mark claims; plating letters win over everything beside them. */
export function readMark(mark) {
  const plain = plainMark(mark);
  for (const read of READERS) {
    const found = read(plain);
    if (found) return found;
  }
  return UNKNOWN;
}
const readPlating = ({ text, numbers }) => {
  const plating = PLATING_MARKS.find(({ pattern }) => pattern.test(text));
  if (!plating) return null;
  const { metal, words, sources } = plating;
  const silver = numbers.find(isSilverNumber) ?? (/\bSTER(LING)?\b/.test(text) ? 925 : null);
  if (!metal.startsWith('plated gold') || silver === null) return { metal, permille: null, words, sources };
  return { metal: 'plated gold on silver', permille: silver, words: `gilt silver · ${silver}: silver with a gold coat`, sources };
};
const readNamed = (plain) => {
  const name = plain.text.replace(/^A 1$/, 'A1');
  const fits = bestOf(
    NAMED_MARKS.filter(({ mark }) => mark === name),
    plain,
    true,
  );
  const [first, ...others] = fits;
  if (!first) return null;
  const { metal, permille, words, sources } = first;
  if (others.every((other) => other.permille === permille)) return { metal, permille, words, sources };
  return { metal, permille: null, words: fits.map((fit) => fit.words).join(', or '), sources };
};
const readTwoMetals = ({ text }) => {
  const gold = /\b\d{1,2} (KP?|KT|CT?)\b|\bK \d/.exec(text);
  if (!gold) return null;
  const together = (other) => ({
    metal: `gold and ${other}`,
    permille: null,
    words: `gold and ${other} together: enter the parts`,
    sources: other === 'platinum' ? ['OPC'] : [],
  });
  if (/\bPLAT\b/.test(text)) return together('platinum');
  return /\bSIL(VER)?\b|\bSTER(LING)?\b|\b925\b/.test(text) ? together('silver') : null;
};
const readPlatinumGroup = ({ text, numbers }) => {
  const percent = /(\d+) ?% IRID/.exec(text);
  if (percent) return iridium(1000 - 10 * Number(percent[1]));
  if (/\bIRID ?PLAT\b|\bPLAT ?IRID\b/.test(text)) return iridium(900);
  const [number] = numbers.filter((n) => n >= 500 && n <= 1000);
  if (number === undefined) return null;
  if (/\bPLAT\b/.test(text))
    return { metal: 'platinum', permille: number, words: `platinum · ${number}`, sources: ['TDS', 'JNN', 'FTCPT', 'KKM'] };
  return /\bPD\b/.test(text) ? { metal: 'palladium', permille: number, words: `palladium · ${number}`, sources: ['HMC'] } : null;
};
const iridium = (permille) => ({
  metal: 'platinum',
  permille,
  words: `platinum · ${permille}, iridium ${1000 - permille}`,
  sources: ['REF', 'OPC'],
});
/** A carat with letters; a number of permille beside it is the firmer one. */
const readKarat = ({ text, country, numbers }) => {
  const after = /(?<![\d.])(\d{1,2}(?:\.\d)?) (KP|KT?|CT?|CARATS?|KARATS?)\b/.exec(text);
  const before = /\bK (\d{1,2})\b/.exec(text);
  const n = Number((after ?? before)?.[1]);
  const number = numbers.find((candidate) => candidate >= 300 && candidate < 1000);
  if (number !== undefined && (after || before || /\b\d{3} KP\b/.test(text))) {
    return { metal: 'gold', permille: number, words: n ? `${n}K · ${number}` : goldWords(number), sources: ['PGR', 'KPL'] };
  }
  if (!(n > 0 && n <= 24)) return null;
  if (before) {
    const permille = CARAT_STANDARDS.JP[n] ?? karats(n);
    return { metal: 'gold', permille, words: `K${n} ${/\bWG\b/.test(text) ? 'white ' : ''}gold · ${permille}`, sources: ['JNN'] };
  }
  if (after?.[2]?.startsWith('K') && country !== 'GB')
    return { metal: 'gold', permille: karats(n), words: `${n}K`, sources: ['GNU', 'KPL'] };
  if (after?.[2]?.startsWith('K')) return { metal: 'gold', permille: karats(n), words: `${n}ct gold · ${karats(n)}`, sources: ['GNU'] };
  return caratStandard(n, country === 'JP' ? 'JP' : 'GB');
};
/** A carat without letters: in Britain and Ireland, alone or beside its number or crown, and 19.2 in Portugal. */
const readBareCarat = ({ text, country, numbers }) => {
  const [n, number] = numbers;
  if (n === undefined) return null;
  if (country === 'PT' && text === '19.2') return { metal: 'gold', permille: 800, words: goldWords(800), sources: ['ORB'] };
  if ((country !== 'GB' && country !== 'IE') || !(n in CARAT_STANDARDS.GB)) return null;
  const standard = caratStandard(n, 'GB');
  return number === undefined || number === standard.permille ? standard : null;
};
const readOldParts = ({ text, country, era, numbers }) => {
  const [n] = numbers;
  const dinheiros = text.replace(/ DINHEIROS?$/, '');
  if (n === undefined || dinheiros !== String(n) || n > 96) return null;
  const metal = ZOLOTNIK.gold.includes(n) ? 'gold' : ZOLOTNIK.silver.includes(n) ? 'silver' : null;
  if (country === undefined ? n === 56 || n === 84 : country === 'RU' && overlaps(era, '-1927')) return zolotnik(n, metal);
  if ((country === 'DE' || country === 'AT') && n <= 16 && overlaps(era, '-1888')) {
    return {
      metal: 'silver',
      permille: tenths((n * 1000) / 16),
      words: `silver · ${n} loth, ${tenths((n * 1000) / 16)}`,
      sources: ['SVC', 'BST'],
    };
  }
  const share = country === 'BR' || country === 'PT' || dinheiros !== text ? DINHEIROS[n] : undefined;
  return share ? { metal: 'silver', permille: share, words: `silver · ${n} dinheiros, ${share}`, sources: ['SVC'] } : null;
};
/** A number of permille; the metal by a sign beside it, by the country, or by the number itself. */
const readNumber = (plain) => {
  const number = plain.numbers.find((n) => n >= 300 && n <= 1000);
  if (number === undefined) return null;
  const [sign] = bestOf(
    METAL_SIGNS.filter(({ pattern }) => pattern.test(plain.text)),
    plain,
    true,
  );
  const [local] = bestOf(
    COUNTRY_NUMBERS.filter((entry) => entry.number === number),
    plain,
    false,
  );
  const metal = sign?.metal ?? local?.metal ?? bareMetal(number);
  if (metal === null && !BARE_NUMBERS.unsaid.includes(number)) return null;
  const sources = sign?.sources ?? local?.sources ?? ['GJW'];
  return { metal, permille: number, words: numberWords(metal, number, plain.country), sources };
};
const READERS = [readPlating, readNamed, readTwoMetals, readPlatinumGroup, readKarat, readBareCarat, readOldParts, readNumber];
const tenths = (n) => Math.round(n * 10) / 10;
const karats = (n) => tenths((n * 1000) / 24);
const isSilverNumber = (n) => BARE_NUMBERS.silver.includes(n);
function bareMetal(number) {
  if (BARE_NUMBERS.gold.includes(number)) return 'gold';
  return isSilverNumber(number) ? 'silver' : null;
}
function caratStandard(n, country) {
  const permille = CARAT_STANDARDS[country][n] ?? karats(n);
  return {
    metal: 'gold',
    permille,
    words: `${n}ct gold · ${permille}`,
    sources: country === 'JP' ? ['JNN'] : ['PGR', 'GSH', 'HMP', 'VCS'],
  };
}
function zolotnik(n, metal) {
  const permille = tenths((n * 1000) / 96);
  const words =
    metal === null
      ? `${n === 96 ? 'pure, ' : ''}by the zolotnik count`
      : `${metal === 'gold' ? goldName(permille) : 'silver'} · ${n} zolotnik, ${permille}`;
  return { metal, permille, words, sources: ['DRG', 'ASC', 'NKR'] };
}
const goldName = (permille) => (CARATS_OF[permille] ? `${CARATS_OF[permille]} gold` : 'gold');
const goldWords = (permille) => `${goldName(permille)} · ${permille}`;
const SILVER_NAMES = { 925: 'sterling silver', 958: 'Britannia silver', 999: 'fine silver' };
function numberWords(metal, number, country) {
  if (metal === null) return `${number}: metal not said by the number, look and test`;
  if (metal === 'gold') return number === 986 ? 'gold · 986 (ducat)' : goldWords(number);
  if (metal !== 'silver') return `${metal} · ${number}`;
  return `${number === 900 && country === 'US' ? 'coin silver' : (SILVER_NAMES[number] ?? 'silver')} · ${number}`;
}
