// From which ring size to which, as the details of the work say it and as the finish reads it back.
const SIZES = /^size (.+?) to ([^;]+)/;
/** "size L to N" before whatever else was said of the work; nothing where neither was said. */
export function workDetails(from, to, more) {
  const sizes = from === undefined && to === undefined ? [] : [`size ${from ?? 'as it is'} to ${to ?? 'fit'}`];
  const all = [...sizes, ...(more === undefined ? [] : [more])].join('; ');
  return all === '' ? undefined : all;
}
/** The sizes that `workDetails` wrote; empty where it wrote none. */
export function sizesIn(details) {
  const [, from = '', to = ''] = SIZES.exec(details ?? '') ?? [];
  return { from, to };
}
