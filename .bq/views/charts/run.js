import { Fragment as _Fragment, jsx as _jsx, jsxs as _jsxs } from 'hono/jsx/jsx-runtime';

const [WIDTH, HEIGHT, LEFT, RIGHT, TOP, BOTTOM] = [720, 240, 8, 150, 16, 24];
/** A run of points; each opens its job. The picture's title says what it shows, the table beside it says the figures. */
export function Run({ title, points, lines }) {
  const values = [
    ...points.filter(({ leftOut }) => !leftOut).flatMap(({ value, other }) => [value, other ?? value]),
    ...lines.map(({ at }) => at),
    0,
  ];
  const [low, high] = [Math.min(...values), Math.max(...values)];
  // A point that was left out must not flatten the others: it sits at the edge of the scale.
  const y = (value) => TOP + (HEIGHT - TOP - BOTTOM) * (1 - (Math.min(high, Math.max(low, value)) - low) / (high - low || 1));
  const x = (index) => LEFT + ((WIDTH - LEFT - RIGHT) * (index + 0.5)) / Math.max(1, points.length);
  const path = (of) => points.map((point, i) => `${i === 0 ? 'M' : 'L'}${x(i).toFixed(1)} ${y(of(point)).toFixed(1)}`).join('');
  const end = WIDTH - RIGHT;
  return _jsxs('svg', {
    class: 'chart wide',
    viewBox: `0 0 ${WIDTH} ${HEIGHT}`,
    role: 'group',
    'aria-label': title,
    children: [
      _jsx('title', { children: title }),
      _jsx('path', { class: 'axis', d: `M${LEFT} ${y(0)}H${end}` }),
      lines.map(({ at, words, isLimit }) =>
        _jsxs(_Fragment, {
          children: [
            _jsx('path', { class: isLimit ? 'limit' : 'usual', d: `M${LEFT} ${y(at)}H${end}` }),
            _jsx('text', { class: 'axis-words', x: end + 8, y: y(at) - 2, children: words }),
          ],
        }),
      ),
      _jsx('text', { class: 'axis-words', x: end + 8, y: y(0) + 16, children: 'nothing' }),
      _jsx('path', { class: 'run', d: path(({ value }) => value) }),
      points.some(({ other }) => other !== undefined) &&
        _jsx('path', { class: 'run', 'stroke-dasharray': '3 4', d: path(({ other }) => other ?? 0) }),
      points.map(({ value, words, href, leftOut }, i) =>
        _jsx('a', {
          href: href,
          'aria-label': words,
          children: _jsx('circle', {
            class: leftOut ? 'point left-out' : 'point',
            cx: x(i),
            cy: y(value),
            r: '6',
            children: _jsx('title', { children: words }),
          }),
        }),
      ),
    ],
  });
}
