import { Fragment as _Fragment, jsx as _jsx, jsxs as _jsxs } from 'hono/jsx/jsx-runtime';
// Metal from layer to layer, from the top down: each holding as wide as what passes through it, each flow a band between two of them.
import { Patterns } from './bars.js';

const [WIDTH, LAYER, THICK, GAP, LEAST] = [480, 92, 12, 16, 3];
/** The picture of a period's metal; the table beside it gives the figures. */
export function Stream({ title, layers, bands }) {
  const scale = scaleFor(layers, bands);
  const boxes = boxesOf(layers, bands, scale);
  const out = new Map();
  const into = new Map();
  return _jsxs('svg', {
    class: 'chart',
    viewBox: `0 0 ${WIDTH} ${(layers.length - 1) * LAYER + 24 + THICK}`,
    role: 'img',
    'aria-label': title,
    children: [
      _jsx('title', { children: title }),
      _jsx(Patterns, {}),
      bands.map((band) => {
        const d = ribbon(band, boxes, scale, out, into);
        return _jsxs(_Fragment, {
          children: [
            _jsx('path', { class: band.isReckoned ? 'link reckoned' : 'link', d: d, children: _jsx('title', { children: band.words }) }),
            band.isReckoned && _jsx('path', { d: d, fill: 'url(#dots)' }),
          ],
        });
      }),
      layers
        .flatMap((layer) => layer.map((holding, at) => ({ ...holding, isLow: layer.length > 2 && at % 2 === 1 })))
        .map(({ id, words, isLow }) => {
          const box = boxes.get(id);
          return (
            box &&
            _jsxs(_Fragment, {
              children: [
                _jsx('rect', { class: 'holding', x: box.x, y: box.y, width: box.width, height: THICK }),
                _jsx('text', { x: Math.min(box.x, WIDTH - 8 * words.length), y: isLow ? box.y + THICK + 16 : box.y - 6, children: words }),
              ],
            })
          );
        }),
    ],
  });
}
const through = (id, bands) => {
  const sum = (side) => bands.filter((band) => band[side] === id).reduce((total, { value }) => total + value, 0);
  return Math.max(sum('from'), sum('to'));
};
/** Units of width to a gram, so that the widest layer fits. */
function scaleFor(layers, bands) {
  const room = layers.map(
    (layer) =>
      (WIDTH - GAP * (layer.length - 1)) /
      Math.max(
        1e-9,
        layer.reduce((sum, { id }) => sum + through(id, bands), 0),
      ),
  );
  return Math.min(...room, Number.MAX_VALUE);
}
function boxesOf(layers, bands, scale) {
  const boxes = new Map();
  for (const [row, layer] of layers.entries()) {
    const room = (WIDTH - GAP * (layer.length - 1)) / Math.max(1, layer.length);
    for (const [i, { id }] of layer.entries()) {
      const width = Math.max(LEAST, scale * through(id, bands));
      boxes.set(id, { x: Math.min(i * (room + GAP), WIDTH - width), y: row * LAYER + 24, width });
    }
  }
  return boxes;
}
/** A band between two boxes, beside those drawn before it. */
function ribbon({ from, to, value }, boxes, scale, out, into) {
  const [a, b] = [boxes.get(from), boxes.get(to)];
  if (!a || !b) return '';
  const width = Math.max(LEAST, scale * value);
  const [x1, x2] = [a.x + (out.get(from) ?? 0), b.x + (into.get(to) ?? 0)];
  out.set(from, (out.get(from) ?? 0) + width);
  into.set(to, (into.get(to) ?? 0) + width);
  const [y1, y2] = [a.y + THICK, b.y];
  const bend = (y1 + y2) / 2;
  return `M${x1} ${y1}C${x1} ${bend} ${x2} ${bend} ${x2} ${y2}H${x2 + width}C${x2 + width} ${bend} ${x1 + width} ${bend} ${x1 + width} ${y1}z`;
}
