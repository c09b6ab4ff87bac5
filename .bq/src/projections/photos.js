const SHOWS = {
  pan: 'on the pan',
  whole: 'the whole',
  marks: 'marks',
  damage: 'damage or wear',
  stones: 'stones',
  work: 'the work',
};
const SHOPS = { packing: 'packing', paper: 'a signed paper' };
/** Every photograph that an entry of these names, by its hash. */
export function photosIn(kept) {
  return kept.flatMap(({ seq, leaf: { data, occurredAt } }) => {
    if (typeof data.photo !== 'string') return [];
    const own = data.shows === undefined ? 'as looked over' : SHOWS[String(data.shows)];
    const shows = own ?? SHOPS[String(data.shows)] ?? 'photograph';
    return [{ seq, hash: data.photo, atMs: occurredAt, shows, forCustomer: own !== undefined }];
  });
}
