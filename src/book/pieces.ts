// What a piece may be: stored codes and their words.
import { typed } from './us-words.ts';

export const PIECE_KINDS = {
  ring: 'Ring',
  chain: 'Chain',
  bracelet: 'Bracelet',
  bangle: 'Bangle',
  brooch: 'Brooch',
  earrings: 'Earrings',
  pendant: 'Pendant',
  necklace: 'Necklace',
  watch: 'Watch',
  other: 'Other',
} as const;

/** What a piece is called: our own word for its kind, where nobody described it in words of their own, which are marked as typed. */
export const pieceName = (kind: keyof typeof PIECE_KINDS, description: string): string =>
  description === PIECE_KINDS[kind].toLowerCase() ? description : typed(description);
