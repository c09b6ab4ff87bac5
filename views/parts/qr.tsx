// A code for a camera, as one SVG path of dark squares, runs in a row joined, with the quiet zone around them.
import qrcode from 'qrcode-generator';

/** Quiet zone in modules (ISO/IEC 18004, 5.3.8). */
const QUIET = 4;

/** The code of a text, as UTF-8 bytes, at level M (ISO/IEC 18004: about 15 % may be damaged). */
export function Qr({ text, label }: { readonly text: string; readonly label: string }) {
  const code = qrcode(0, 'M');
  code.addData(String.fromCharCode(...new TextEncoder().encode(text)), 'Byte');
  code.make();
  const size = code.getModuleCount();
  const rows = Array.from({ length: size }, (_, y) => Array.from({ length: size }, (_, x) => code.isDark(y, x)));
  const whole = size + 2 * QUIET;
  return (
    <svg class="qr" viewBox={`${-QUIET} ${-QUIET} ${whole} ${whole}`} role="img" aria-label={label} shape-rendering="crispEdges">
      <rect x={-QUIET} y={-QUIET} width={whole} height={whole} fill="#fff" />
      <path d={rows.map(runs).join('')} fill="#000" />
    </svg>
  );
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
