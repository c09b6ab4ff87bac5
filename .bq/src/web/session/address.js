// What an address may say: a path of this site to go back to, and a whole number written one way.
/** Longer than any address of this program, and short enough for a header. */
const LONGEST = 2000;
/** A path of this site, whatever was asked for; '/' for anything else. Browsers read a backslash as a slash and drop tabs and line ends, so only what an address is written with is let through. */
export const localPath = (text) => (text.length <= LONGEST && /^\/(?!\/)[\x21-\x5b\x5d-\x7e]*$/.test(text) ? text : '/');
/** A whole number as addresses and forms write it: figures alone, no leading zero; null for anything else. */
export const wholeNumber = (text) => (text !== undefined && /^(0|[1-9]\d{0,14})$/.test(text) ? Number(text) : null);
