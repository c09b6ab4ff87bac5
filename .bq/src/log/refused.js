// A refusal: what this folder answers when what it was given is not what it should be. Codes are never renamed.
/** The refusal for a code, with its sentence from the table of the module that refuses. */
export const refuseWith = (says, refused) => ({
  refused,
  say: says[refused],
});
