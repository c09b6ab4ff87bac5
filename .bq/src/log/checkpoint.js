// The signed head of the log: origin, size and root, one a line (C2SP tlog-checkpoint). Extension lines, which no ledger here writes, are refused.
import { base64, bytesOfBase64 } from './bytes.js';
import { parseDecimal } from './merkle.js';
import { firstOfEach, openNote } from './note.js';
import { refuseWith } from './refused.js';

const SAYS = {
  not_checkpoint: 'This is not a checkpoint: three lines, the ledger, its size and its root. Copy it again.',
  bad_size: 'The size in this checkpoint is not a number that a ledger can reach. Copy it again.',
  bad_root: 'The root in this checkpoint is not a SHA-256 hash in base64. Copy it again.',
  other_origin: 'This checkpoint is of another ledger. Choose the one of this shop.',
  not_signed_by_log: 'Only a witness signed this checkpoint, not the shop. Ask for the whole note.',
};
const refuse = (code) => refuseWith(SAYS, code);
/** The text of a checkpoint, to be signed as a note. */
export const formatCheckpoint = ({ origin, size, root }) => `${origin}\n${size}\n${base64(root)}\n`;
/** Reads the text of a checkpoint: a non-empty origin, a decimal size, a root of 32 bytes. */
export function parseCheckpoint(text) {
  const [origin = '', decimal = '', encoded = '', ...rest] = text.split('\n');
  if (origin === '' || rest.length !== 1 || rest[0] !== '') return refuse('not_checkpoint');
  const size = parseDecimal(decimal);
  if (typeof size !== 'number') return refuse('bad_size');
  const root = bytesOfBase64(encoded);
  return root?.length === 32 ? { origin, size, root } : refuse('bad_root');
}
/** Opens a signed checkpoint of that origin: a plain signature by a key of the log is needed, whatever the witnesses signed. */
export function openCheckpoint(note, origin, keys, verify) {
  const opened = openNote(note, [...keys.log, ...keys.witnesses], verify);
  if ('refused' in opened) return opened;
  if (!opened.signedBy.some(({ key }) => key.type === 1)) return refuse('not_signed_by_log');
  const checkpoint = parseCheckpoint(opened.text);
  if ('refused' in checkpoint) return checkpoint;
  if (checkpoint.origin !== origin) return refuse('other_origin');
  const witnessed = opened.signedBy.flatMap(({ key, atSeconds }) => (atSeconds === undefined ? [] : [{ name: key.name, atSeconds }]));
  return { ...checkpoint, witnessed: firstOfEach(witnessed, ({ name }) => name) };
}
