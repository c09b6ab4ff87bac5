// What a piece may be: stored codes and their words.
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
};
