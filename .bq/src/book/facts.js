/** A flow of matter from one end to the other; without a reading it is not measured. */
export const flow = (from, to, matter, reading) =>
  reading === undefined ? { fact: 'flow', from, to, matter } : { fact: 'flow', from, to, matter, reading };
/** A flow of all that is in `from`; its mass is found when folding, so that late corrections carry through. */
export const flowOfWhole = (from, to, matter) => ({ fact: 'flow', from, to, matter, whole: true });
/** Any other fact. Facts are built by these alone: the members of a literal that a callback returns are not checked for excess. */
export const fact = (kind, said) => ({ fact: kind, ...said });
