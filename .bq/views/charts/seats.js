import { jsx as _jsx, jsxs as _jsxs } from 'hono/jsx/jsx-runtime';

const STEP = 64;
const ACROSS = 10;
/** Seats as they were noted, ten in a row: a full outline is in its seat, a dashed one is out, a cross is empty. */
export function Diagram({ rows }) {
  const across = Math.min(ACROSS, rows.length);
  const down = Math.ceil(rows.length / ACROSS);
  const words = rows.map(({ letter, seat, where }) => `${letter} ${seat}: ${where}`).join('; ');
  return _jsxs('figure', {
    class: 'seats',
    children: [
      _jsx('svg', {
        viewBox: `0 0 ${across * STEP} ${down * (STEP + 24)}`,
        role: 'img',
        'aria-label': `Seats as noted. ${words}`,
        children: rows.map((row, n) =>
          _jsxs('g', {
            class: SHAPED[row.where],
            transform: `translate(${(n % ACROSS) * STEP + STEP / 2} ${Math.floor(n / ACROSS) * (STEP + 24) + STEP / 2})`,
            children: [
              _jsx(Outline, { cut: row.cut }),
              row.where === 'empty'
                ? _jsx('path', { class: 'cross', d: 'M-10 -10L10 10M10 -10L-10 10' })
                : _jsx('text', { y: '6', children: row.letter }),
              row.stones > 1 && _jsx('text', { class: 'group', y: '42', children: `× ${row.stones}` }),
            ],
          }),
        ),
      }),
      _jsx('figcaption', {
        children: _jsx('small', { children: 'In the order they were noted. Full line: in its seat. Dashed: out. Cross: empty seat.' }),
      }),
    ],
  });
}
const SHAPED = {
  'in the piece': 'in',
  set: 'in set',
  out: 'out',
  empty: 'out',
  'gone home': 'out',
};
/** The outline of a cut as a plan view shows it. */
function Outline({ cut }) {
  switch (cut) {
    case 'step':
      return _jsx('path', { d: 'M-14 -22H14L22 -14V14L14 22H-14L-22 14V-14Z' });
    case 'princess':
      return _jsx('rect', { x: '-20', y: '-20', width: '40', height: '40' });
    case 'baguette':
      return _jsx('rect', { x: '-12', y: '-24', width: '24', height: '48' });
    case 'oval':
      return _jsx('ellipse', { rx: '18', ry: '24' });
    case 'cushion':
      return _jsx('rect', { x: '-21', y: '-21', width: '42', height: '42', rx: '12' });
    case 'marquise':
      return _jsx('path', { d: 'M0 -26Q30 0 0 26Q-30 0 0 -26Z' });
    case 'pear':
      return _jsx('path', { d: 'M0 -26Q22 0 19 11A19 19 0 0 1 -19 11Q-22 0 0 -26Z' });
    default:
      return _jsx('circle', { r: '22' });
  }
}
