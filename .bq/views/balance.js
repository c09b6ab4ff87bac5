import { Fragment as _Fragment, jsx as _jsx, jsxs as _jsxs } from 'hono/jsx/jsx-runtime';
// One balance: its plate, what it may be out by, its checks, and the weighings a failed one puts in doubt.
import { Ledger } from './parts/ledger.js';

const RESULTS = { pass: 'passed', warn: 'passed, over half of what is allowed', fail: 'failed' };
export function BalanceView({ id, name, facts, errors, checks, lastGood, failing, doubted, caution }) {
  return _jsxs(_Fragment, {
    children: [
      _jsxs('section', {
        class: 'head',
        children: [
          _jsx('p', { class: 'soft', children: 'Balance' }),
          _jsx('h1', { children: name }),
          failing
            ? _jsxs('p', {
                class: 'again',
                role: 'alert',
                children: [
                  _jsx('b', { children: 'It failed its last check.' }),
                  ' What was weighed since ',
                  lastGood ?? 'it was first used',
                  ' is in doubt: weigh it again on another balance.',
                ],
              })
            : _jsx('p', {
                children: lastGood === null ? 'It was never checked with a certified weight.' : `Last check passed ${lastGood}.`,
              }),
          _jsxs('p', {
            class: 'act',
            children: [
              _jsx('a', { class: 'button', href: `/balances/${id}/check`, children: 'Daily check' }),
              _jsx('a', { href: `/balances/${id}/repeatability`, children: 'Ten readings' }),
              _jsx('a', { href: `/write/balance_calibrated?balance=${id}`, children: 'Calibration' }),
            ],
          }),
        ],
      }),
      _jsx('dl', {
        class: 'facts',
        children: facts.map(([words, value]) =>
          _jsxs('div', { children: [_jsx('dt', { children: words }), _jsx('dd', { children: value })] }),
        ),
      }),
      doubted.length > 0 &&
        _jsxs('section', {
          'aria-labelledby': 'd',
          children: [_jsx('h2', { id: 'd', children: 'Weighings in doubt' }), _jsx(Ledger, { lines: doubted })],
        }),
      _jsxs('div', { class: 'two', children: [_jsx(Limits, { errors: errors, caution: caution }), _jsx(Checks, { checks: checks })] }),
    ],
  });
}
function Limits({ errors, caution }) {
  return _jsxs('section', {
    'aria-labelledby': 'p',
    children: [
      _jsx('h2', { id: 'p', children: 'What it may be out by' }),
      _jsxs('table', {
        class: 'limits',
        children: [
          _jsx('thead', {
            children: _jsxs('tr', {
              children: [
                _jsx('th', { scope: 'col', children: 'At' }),
                _jsx('th', { scope: 'col', children: 'when verified' }),
                _jsx('th', { scope: 'col', children: 'in use' }),
              ],
            }),
          }),
          _jsx('tbody', {
            children: errors.map(({ load, initial, inService }) =>
              _jsxs('tr', {
                children: [
                  _jsx('th', { scope: 'row', children: load }),
                  _jsx('td', { children: initial }),
                  _jsx('td', { children: inService }),
                ],
              }),
            ),
          }),
        ],
      }),
      caution && _jsxs('p', { class: 'soft', children: ['Usual caution: ', caution] }),
    ],
  });
}
function Checks({ checks }) {
  return _jsxs('section', {
    'aria-labelledby': 'c',
    children: [
      _jsx('h2', { id: 'c', children: 'Checks' }),
      _jsx('ol', {
        class: 'ledger',
        children: checks.map(({ seq, at, result, words }) =>
          _jsxs('li', {
            class: `check ${result}`,
            children: [
              _jsx('b', { children: RESULTS[result] }),
              _jsxs('small', { children: [_jsx('a', { href: `/entries/${seq}`, children: seq }), ' \u00B7 ', at, ' \u00B7 ', words] }),
            ],
          }),
        ),
      }),
    ],
  });
}
