import { jsx as _jsx, jsxs as _jsxs } from 'hono/jsx/jsx-runtime';

const REACH = 26;
export function Beam({ state, tilt, sentence }) {
  const rise = Math.round(Math.max(-1, Math.min(1, tilt)) * REACH);
  const [left, right] = [70 - rise, 70 + rise];
  const pan = (x, y) => `M${x} ${y}l-34 46h68z`;
  return _jsxs('svg', {
    class: `beam ${state}`,
    viewBox: '0 0 720 150',
    role: 'img',
    'aria-label': sentence,
    children: [
      _jsx('title', { children: sentence }),
      _jsx('rect', { class: 'band', x: '150', y: 70 - REACH / 2, width: '420', height: REACH }),
      _jsx('path', { class: 'post', d: 'M360 70V128M330 129h60' }),
      _jsx('path', { class: 'arm', d: `M150 ${left}L570 ${right}` }),
      _jsx('path', { class: 'pan', d: `${pan(150, left)}${pan(570, right)}` }),
      _jsx('circle', { class: 'hub', cx: '360', cy: '70', r: '5' }),
    ],
  });
}
