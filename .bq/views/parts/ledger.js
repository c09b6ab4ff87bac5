import { jsx as _jsx, jsxs as _jsxs } from 'hono/jsx/jsx-runtime';
export function Ledger({ lines }) {
  const here = new Map(lines.map((line) => [line.seq, line]));
  const isJoined = ({ corrects }) => corrects !== null && here.has(corrects);
  const joinedTo = ({ correctedBy }) => correctedBy.flatMap((seq) => here.get(seq) ?? []);
  return _jsx('ol', {
    class: 'ledger',
    children: lines
      .filter((line) => !isJoined(line))
      .flatMap((line) => [
        _jsx(Line, { line: line }),
        ...joinedTo(line).map((correction, n, all) => _jsx(Line, { line: correction, weight: n === all.length - 1 ? line.weight : '' })),
      ]),
  });
}
/** `weight` is what stands after the correction that this line is. */
function Line({ line, weight }) {
  const isStruck = line.first !== null;
  const isSaidAlready = line.first === null && line.said.includes(line.weight);
  return _jsxs('li', {
    class: isStruck ? 'struck' : weight === undefined ? '' : 'joined',
    children: [
      _jsx('b', { children: isStruck ? _jsx('s', { children: line.first?.said }) : line.said }),
      _jsx('span', {
        class: 'num',
        children: isStruck ? _jsx('s', { children: line.first?.weight }) : (weight ?? (isSaidAlready ? '' : line.weight)),
      }),
      _jsxs('small', {
        children: [
          _jsx('a', { href: `/entries/${line.seq}`, children: line.seq }),
          ' \u00B7 ',
          line.at,
          ' \u00B7 ',
          line.by,
          line.late && ` · written late: it happened ${line.late}`,
          line.correctedBy.length > 0 && ` · corrected by ${line.correctedBy.join(', ')}`,
        ],
      }),
    ],
  });
}
