import { Fragment as _Fragment, jsx as _jsx, jsxs as _jsxs } from 'hono/jsx/jsx-runtime';
// What the customer takes away, what stays with the shop, and what goes on the bag.
import { Tag } from './parts/tag.js';
export function SlipView(slip) {
  return _jsxs(_Fragment, {
    children: [
      _jsxs('section', {
        class: 'head on-screen',
        children: [
          _jsxs('p', { class: 'written', role: 'status', children: ['Written and bagged as ', _jsx('b', { children: slip.bag }), '.'] }),
          _jsx('h1', { children: slip.title }),
          _jsxs('div', {
            class: 'act',
            children: [
              _jsx('button', { type: 'button', 'data-print': true, children: 'Print' }),
              _jsx('a', { href: `/ticket?after=${slip.job}`, children: 'Another piece for the same customer' }),
              _jsx('a', { href: `/jobs/${slip.job}`, children: 'The job' }),
              _jsx('a', { href: '/', children: 'Counter' }),
              _jsx(IssueSlip, { title: slip.title, action: `/jobs/${slip.job}/slip`, again: true }),
            ],
          }),
        ],
      }),
      _jsxs('div', { class: 'slips', children: [_jsx(Slip, { ...slip }), _jsx(Counterfoil, { ...slip })] }),
      _jsx(Label, { ...slip }),
    ],
  });
}
/** Issues a slip: the first, or a fresh one that names the record as it stands now. */
export function IssueSlip({ title, action, again }) {
  const button = again ? _jsx('button', { class: 'plain', children: 'Issue a fresh one' }) : _jsx('button', { children: 'Issue it' });
  return _jsxs('form', { method: 'post', action: action, children: [!again && _jsx('h1', { children: title }), button] });
}
/** Quiet zone of four modules (ISO/IEC 18004, 5.3.8). */
const QUIET = 4;
function Qr({ code, words }) {
  const side = code.side + 2 * QUIET;
  return _jsx('svg', {
    class: 'qr',
    viewBox: `${-QUIET} ${-QUIET} ${side} ${side}`,
    role: 'img',
    'aria-label': words,
    children: _jsx('path', { d: code.path }),
  });
}
function Slip(slip) {
  return _jsxs('section', {
    class: 'slip',
    'aria-label': slip.title,
    children: [
      _jsx('p', { class: 'soft', children: slip.shop }),
      _jsx(Tag, { code: slip.bag, metal: slip.metal }),
      _jsx('ul', { children: slip.pieces.map((piece) => _jsx('li', { children: piece })) }),
      slip.promise && _jsxs('p', { children: ['Ready by ', _jsx('b', { children: slip.promise })] }),
      _jsx('p', { children: 'Bring this slip. We count the stones out with you.' }),
      _jsxs('div', {
        class: 'signed',
        children: [
          _jsx(Qr, { code: slip.noteCode, words: 'The signed note of our record' }),
          _jsxs('small', {
            children: [
              'Entries ',
              slip.first,
              ' to ',
              slip.last,
              ' are yours, in a record of ',
              slip.size,
              ' entries that we signed when you left. Keep this: the code is our signature. Our key: ',
              _jsx('code', { children: slip.fingerprint }),
            ],
          }),
        ],
      }),
    ],
  });
}
function Counterfoil({ bag, metal, title, customer, pieces, promise }) {
  return _jsxs('section', {
    class: 'slip counterfoil',
    'aria-label': 'Counterfoil',
    children: [
      _jsxs('p', { class: 'soft', children: [title, ': the shop\u2019s part'] }),
      _jsx(Tag, { code: bag, metal: metal }),
      _jsx('p', { children: _jsx('b', { children: customer }) }),
      _jsx('p', { children: pieces.join('; ') }),
      promise && _jsxs('p', { children: ['Ready by ', promise] }),
      _jsx('p', { class: 'signature', children: 'Left and agreed, signed' }),
      _jsx('p', { class: 'signature', children: 'Taken home, signed' }),
    ],
  });
}
function Label({ bag, metal, pieces, promise, bagCode }) {
  return _jsxs('section', {
    class: 'bag-label',
    'aria-label': 'Bag label',
    children: [
      _jsx(Tag, { code: bag, metal: metal }),
      _jsxs('small', { children: [pieces.join('; '), promise && ` · by ${promise}`] }),
      _jsx(Qr, { code: bagCode, words: `Opens bag ${bag}` }),
    ],
  });
}
