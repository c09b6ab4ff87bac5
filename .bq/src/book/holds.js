const UNTIL = 'until ';
/** The reason of a hold that ends when `day` comes. */
export const holdUntil = (day) => UNTIL + day;
/** The reasons that still hold on `today`, in the order given. */
export const standing = (holds, today) => holds.filter((why) => !why.startsWith(UNTIL) || why.slice(UNTIL.length) > today);
