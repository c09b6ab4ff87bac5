// A QR code as one path of an SVG: every dark module a square, runs in a row joined.
import qrcode from 'qrcode-generator';
import type { QrCode } from '../../../views/parts/slip.tsx';

/** The code of a text, as UTF-8 bytes, at level M (ISO/IEC 18004: about 15 % may be damaged). */
export function qrOf(text: string): QrCode {
  const code = qrcode(0, 'M');
  code.addData(String.fromCharCode(...new TextEncoder().encode(text)), 'Byte');
  code.make();
  const side = code.getModuleCount();
  const rows = Array.from({ length: side }, (_, row) => Array.from({ length: side }, (_, column) => code.isDark(row, column)));
  return { side, path: rows.map(runs).join('') };
}

function runs(row: readonly boolean[], y: number): string {
  let path = '';
  for (let x = 0; x < row.length; x++) {
    if (!row[x] || row[x - 1]) continue;
    const end = row.indexOf(false, x);
    const length = (end < 0 ? row.length : end) - x;
    path += `M${x} ${y}h${length}v1h-${length}z`;
  }
  return path;
}
