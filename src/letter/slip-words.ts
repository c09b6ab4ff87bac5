// What a collection slip says, put together from the job's own entries: what was left, what is done to it, what becomes of the metal.
import { METAL_WORDS, type MetalCode } from '../book/metals.ts';
import { type PIECE_KINDS, pieceName } from '../book/pieces.ts';
import { typed } from '../book/us-words.ts';
import { stonesWords } from '../book/words.ts';
import { WORK_STEPS, wordsOf } from '../book/work.ts';
import { readCorrected } from '../ledger/corrections.ts';
import type { Kept } from '../ledger/leaf.ts';
import type { Values } from '../ledger/registry.ts';
import { type CorrectedFigure, correctedFigures } from '../projections/corrected.ts';
import { type CivilDate, formatCivilDate } from '../units/dates.ts';
import { formatMoney, type Money } from '../units/money.ts';
import { type Reading, readingWords } from '../weighing/reading.ts';

export interface SlipPiece {
  /** What it is, its metal, and its stones as they were counted. */
  readonly what: string;
  readonly weight: string;
  readonly condition: string | null;
}
export interface SlipWords {
  /** When the first piece came in, in milliseconds since 1970 UTC; null before one did. */
  readonly leftAtMs: number | null;
  readonly pieces: readonly SlipPiece[];
  readonly stones: number;
  /** Null until work was agreed. */
  readonly work: string | null;
  readonly price: string;
  readonly ready: string | null;
  /** What becomes of what leaves the piece, one sentence each. */
  readonly metal: readonly string[];
}

/** What the slip of a job says; what somebody typed is marked, so that the words of the country leave it alone. */
export function slipWords(kept: readonly Kept[]): SlipWords {
  const all = readCorrected(kept);
  const said = (type: string) => all.filter(({ leaf }) => leaf.type === type);
  const changed = correctedFigures(kept);
  const received = said('piece_received');
  const declined = new Map(said('weight_not_taken').map(({ data }) => [String(data.piece), true]));
  const agreed = said('work_agreed').at(-1)?.data;
  const promise = said('promise_moved').at(-1)?.data.promise ?? agreed?.promise;
  return {
    leftAtMs: received[0]?.occurredAt ?? null,
    pieces: received.map(({ seq, data }) =>
      pieceOf(
        data,
        declined.has(String(data.piece)),
        changed.filter((one) => one.seq === seq),
      ),
    ),
    stones: received.reduce((sum, { data }) => sum + Number(data.stones), 0),
    work: agreed ? workOf(agreed) : null,
    price: priceOf(agreed),
    ready: promise === undefined ? null : formatCivilDate(promise as CivilDate),
    metal: agreed ? metalOf(agreed) : [],
  };
}

function pieceOf(
  { kind, description, parts, stones, weight, condition }: Values,
  isDeclined: boolean,
  changed: readonly CorrectedFigure[],
): SlipPiece {
  const weighed = weight ? readingWords(weight as Reading) : isDeclined ? 'not weighed, as agreed' : 'not weighed';
  const before = changed.length === 0 ? '' : ` (corrected; first written: ${changed.map(({ first }) => first).join(', ')})`;
  const metals = [...new Set((parts as readonly { readonly metal: MetalCode }[]).map(({ metal }) => METAL_WORDS[metal]))].join(', ');
  const counted = Number(stones) > 0 ? stonesWords(Number(stones)) : 'no stones';
  return {
    what: `${capital(pieceName(kind as keyof typeof PIECE_KINDS, String(description)))}, ${metals}, ${counted}`,
    weight: `${weighed}${before}`,
    condition: condition === undefined ? null : typed(String(condition)),
  };
}

function workOf({ steps, details }: Values): string {
  const work = wordsOf(WORK_STEPS, steps as readonly (keyof typeof WORK_STEPS)[]);
  return capital(details === undefined ? work : `${work}: ${typed(String(details))}`);
}

function priceOf(agreed: Values | undefined): string {
  const price = agreed?.price as Money | undefined;
  if (agreed?.priceKind === 'free') return 'free of charge';
  if (!price) return 'price to follow';
  return agreed?.priceKind === 'estimate' ? `about ${formatMoney(price)}, an estimate` : formatMoney(price);
}

const GOES = {
  customer: 'comes back to you',
  shop: 'stays with the shop',
  credit: 'stays with the shop, and you are credited for it',
} as const;
const goes = (code: unknown): string => GOES[code as keyof typeof GOES];

const metalOf = ({ cutMetal, dust, oldParts }: Values): readonly string[] => [
  `Worn metal that we take out ${goes(cutMetal)}.`,
  `Dust and filings: what we can gather ${goes(dust)}.`,
  oldParts === 'customer' ? 'Old parts come back to you.' : 'You do not want old parts back.',
];

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
