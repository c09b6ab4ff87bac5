import { jsx as _jsx, jsxs as _jsxs } from 'hono/jsx/jsx-runtime';
// A code for a camera, as one SVG path of dark squares with the quiet zone around them (ISO/IEC 18004, 9.1: four modules).
import qrcode from 'qrcode-generator';

const QUIET = 4;
export function Qr({ text, label }) {
  const code = qrcode(0, 'M');
  code.addData(text);
  code.make();
  const size = code.getModuleCount();
  const rows = Array.from({ length: size }, (_, y) =>
    Array.from({ length: size }, (_, x) => (code.isDark(y, x) ? `M${x + QUIET} ${y + QUIET}h1v1h-1z` : '')).join(''),
  );
  const whole = size + 2 * QUIET;
  return _jsxs('svg', {
    class: 'qr',
    viewBox: `0 0 ${whole} ${whole}`,
    role: 'img',
    'aria-label': label,
    'shape-rendering': 'crispEdges',
    children: [_jsx('rect', { width: whole, height: whole, fill: '#fff' }), _jsx('path', { d: rows.join(''), fill: '#000' })],
  });
}
