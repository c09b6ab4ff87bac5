import { Fragment as _Fragment, jsx as _jsx, jsxs as _jsxs } from 'hono/jsx/jsx-runtime';

const [WIDTH, ROW, THICK] = [480, 46, 16];
const PATTERN = { total: null, in: null, out: 'hatch', reckoned: 'dots', off: 'cross' };
/** Bars one under another in the order given; `title` is read out in place of the picture. */
export function Bars({ title, bars }) {
  const most = Math.max(1e-9, ...bars.flatMap(({ from, to, give = 0 }) => [from, to + give]));
  const x = (value) => (Math.max(0, value) / most) * (WIDTH - 4) + 2;
  return _jsxs('svg', {
    class: 'chart bars',
    viewBox: `0 0 ${WIDTH} ${bars.length * ROW}`,
    role: 'img',
    'aria-label': title,
    children: [
      _jsx('title', { children: title }),
      _jsx(Patterns, {}),
      bars.map((bar, row) =>
        _jsxs('g', {
          transform: `translate(0 ${row * ROW})`,
          children: [
            _jsx('text', { x: '2', y: '17', children: bar.words }),
            _jsx('text', { x: WIDTH - 2, y: '17', 'text-anchor': 'end', class: 'value', children: bar.value }),
            _jsx(BarShape, { bar: bar, x: x }),
          ],
        }),
      ),
    ],
  });
}
function BarShape({ bar: { from, to, kind, give }, x }) {
  const [left, right] = [x(Math.min(from, to)), x(Math.max(from, to))];
  const shape = { x: left, y: 23, width: Math.max(1.5, right - left), height: THICK };
  const pattern = PATTERN[kind];
  return _jsxs(_Fragment, {
    children: [
      _jsx('rect', { ...shape, class: `bar ${kind}` }),
      pattern && _jsx('rect', { ...shape, fill: `url(#${pattern})` }),
      give !== undefined &&
        _jsx('path', { class: 'whisker', d: `M${x(to - give)} 31H${x(to + give)}M${x(to - give)} 25v12M${x(to + give)} 25v12` }),
    ],
  });
}
/** Hatching, dots and crosses in the colour of the paper, so that no bar is told by its colour alone. */
export function Patterns() {
  return _jsxs('defs', {
    children: [
      _jsx('pattern', {
        id: 'hatch',
        width: '7',
        height: '7',
        patternUnits: 'userSpaceOnUse',
        patternTransform: 'rotate(45)',
        children: _jsx('path', { class: 'grain', d: 'M0 0V7' }),
      }),
      _jsx('pattern', {
        id: 'dots',
        width: '6',
        height: '6',
        patternUnits: 'userSpaceOnUse',
        children: _jsx('circle', { class: 'grain-dot', cx: '3', cy: '3', r: '1.3' }),
      }),
      _jsx('pattern', {
        id: 'cross',
        width: '7',
        height: '7',
        patternUnits: 'userSpaceOnUse',
        patternTransform: 'rotate(45)',
        children: _jsx('path', { class: 'grain', d: 'M0 0V7M0 3.5H7' }),
      }),
    ],
  });
}
