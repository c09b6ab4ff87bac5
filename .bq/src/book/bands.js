// Bands of stated value: stored codes and their words.
/** In the shop's own currency; a band keeps no figure that need not be kept. */
export const BANDS = { 'to-500': 'up to 500', 'to-2000': '500 to 2,000', 'to-10000': '2,000 to 10,000', over: 'over 10,000' };
