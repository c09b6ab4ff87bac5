export const defineSheet = (sheet) => sheet;
/** A line of a sheet, its data checked against the entry's own fields; members left undefined are left out. */
export function line(type, data) {
  return { type, data: Object.fromEntries(Object.entries(data).filter(([, value]) => value !== undefined)) };
}
/** These members of `data`; those that were left out are undefined. */
export function pick(data, names) {
  return Object.fromEntries(names.map((one) => [one, data[one]]));
}
