// A refusal: what this folder answers when what it was given is not what it should be. Codes are never renamed.

/** Why something was refused: a code for programs, a sentence for people. */
export interface Refused<Code extends string> {
  readonly refused: Code;
  readonly say: string;
}

/** The refusal for a code, with its sentence from the table of the module that refuses. */
export const refuseWith = <Code extends string>(says: Readonly<Record<Code, string>>, refused: Code): Refused<Code> => ({
  refused,
  say: says[refused],
});
