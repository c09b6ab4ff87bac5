// Proofs as text that other programs read: C2SP tlog-proof v1, and the paths of tiles under which a mirror publishes its hashes.
import { base64, bytesOfBase64 } from './bytes.js';
import { parseDecimal } from './merkle.js';
import { refuseWith } from './refused.js';

const HEADER = 'c2sp.org/tlog-proof@v1';
const SAYS = {
  not_proof: 'This is not a proof in the form c2sp.org/tlog-proof@v1. Copy it again, whole.',
  bad_extra: 'The extra data of this proof is not base64. Copy it again.',
  bad_index: 'The index of this proof is not a number that a ledger can reach. Copy it again.',
  bad_hash: 'A line of this proof is not a SHA-256 hash in base64. Copy it again.',
  not_tile: 'This is not the path of a tile. Copy it again.',
};
const refuse = (code) => refuseWith(SAYS, code);
/** A proof as text (C2SP tlog-proof, format). */
export function formatProof({ index, hashes, checkpoint, extra }) {
  const extraLine = extra === undefined ? '' : `extra ${base64(extra)}\n`;
  return `${HEADER}\n${extraLine}index ${index}\n${hashes.map((hash) => `${base64(hash)}\n`).join('')}\n${checkpoint}`;
}
/** Reads a proof; neither its hashes nor its checkpoint are verified yet. */
export function parseProof(text) {
  const end = text.indexOf('\n\n');
  const [header, ...lines] = text.slice(0, end).split('\n');
  const checkpoint = text.slice(end + 2);
  if (end < 0 || header !== HEADER || checkpoint === '') return refuse('not_proof');
  const extra = lines[0]?.startsWith('extra ') ? bytesOfBase64(lines.shift()?.slice(6) ?? '') : undefined;
  if (extra === null) return refuse('bad_extra');
  const indexLine = lines.shift() ?? '';
  const index = indexLine.startsWith('index ') ? parseDecimal(indexLine.slice(6)) : null;
  if (typeof index !== 'number') return refuse('bad_index');
  const hashes = lines.map((line) => bytesOfBase64(line)).filter((hash) => hash?.length === 32);
  if (hashes.length !== lines.length) return refuse('bad_hash');
  return { index, hashes: hashes, checkpoint, ...(extra && { extra }) };
}
/** `tile/4/0/x001/234.p/5`: height, level, index in threes of digits, width when not full (golang.org/x/mod/sumdb/tlog, Tile.Path). */
export function formatTilePath({ height, level, index, width }) {
  const threes =
    String(index)
      .padStart(Math.ceil(String(index).length / 3) * 3, '0')
      .match(/.{3}/g) ?? [];
  const path = threes.map((three, i) => (i < threes.length - 1 ? `x${three}` : three)).join('/');
  return `tile/${height}/${level}/${path}${width === 2 ** height ? '' : `.p/${width}`}`;
}
/** Reads the path of a tile; only the text that `formatTilePath` writes is one. */
export function parseTilePath(path) {
  const match = /^tile\/(\d{1,2})\/(\d{1,2})\/((?:x\d{3}\/){0,5}\d{3})(?:\.p\/(\d+))?$/.exec(path);
  if (match === null) return refuse('not_tile');
  const height = Number(match[1]);
  const width = match[4] === undefined ? 2 ** height : Number(match[4]);
  const tile = { height, level: Number(match[2]), index: Number(match[3]?.replace(/[x/]/g, '')), width };
  const inRange = height >= 1 && height <= 30 && width >= 1 && width <= 2 ** height && Number.isSafeInteger(tile.index);
  return inRange && formatTilePath(tile) === path ? tile : refuse('not_tile');
}
