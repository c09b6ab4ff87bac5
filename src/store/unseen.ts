// What no check of the log can show, said in words, with the columns and files it is about: everything else is noticed, and a test tries each.

export interface Unseen {
  /** "file table.column", "file *" for all of it, or a file's name; none where it is about no place. */
  readonly where: readonly string[];
  readonly say: string;
}
export const UNSEEN: readonly Unseen[] = [
  { where: [], say: 'That an entry was true when it was written.' },
  { where: [], say: 'That the clock of the machine was right: an entry bears the time that it gave.' },
  {
    where: [],
    say: 'That whoever an entry names wrote it, and that the PIN or password it tells of was typed: the check asks whether that person, known in that way, was allowed to. An entry that bears “import” was written by whoever held the data directory.',
  },
  {
    where: [],
    say: 'That all of it was not put back from an older copy: only checkpoints.log, a screen that was shown more, or a slip shows that.',
  },
  { where: ['access.db *', 'keys/pepper'], say: 'Who may sign in: PINs, passwords, sessions and screens follow from no entry.' },
  {
    where: ['ledger.db command.mac', 'keys/mac'],
    say: 'Whether a form that is sent again is the same one; where that was changed, it is answered as a form that was used.',
  },
  {
    where: ['keys.db row taken out'],
    say: 'Whether what was said of somebody was erased or its key was lost: how many values have no key is counted.',
  },
  { where: ['photos/* taken out'], say: 'Whether a photograph that is not there was deleted or lost: how many are not there is counted.' },
  {
    where: ['keys/tls.pem', 'lock.db', 'spare', 'backups/*'],
    say: 'The certificate of the shop’s network, the lock, the room kept for reading, and copies made before a change of form.',
  },
];
