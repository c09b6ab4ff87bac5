import { Fragment as _Fragment, jsx as _jsx, jsxs as _jsxs } from 'hono/jsx/jsx-runtime';
import { Waterfall } from './charts/waterfall.js';
import { Entries, Steps } from './parts/steps.js';
import { Tag } from './parts/tag.js';
export function ReckoningView({ job, bag, metal, reckoned, why, customer, stones, insurer }) {
  const agrees = reckoned.closed?.verdict === 'agrees' && why.suspects.length === 0;
  return _jsxs(_Fragment, {
    children: [
      _jsxs('section', {
        class: 'head',
        children: [
          _jsx(Tag, { code: bag, metal: metal, href: `/jobs/${job}` }),
          _jsx('h1', { children: headOf(reckoned, why) }),
          _jsx('p', { class: reckoned.state === 'off' ? 'off-words' : 'sentence', children: reckoned.sentence }),
          reckoned.doubted.length > 0 &&
            _jsxs('p', {
              class: 'again',
              children: [
                _jsx('b', { children: 'The balance failed its check.' }),
                ' Read on it since the last good check: ',
                _jsx(Entries, { seqs: reckoned.doubted }),
                '. The readings stand as they were; weigh again on a balance that passes.',
              ],
            }),
        ],
      }),
      !agrees && reckoned.closed !== null && _jsx(Causes, { why: why, job: job, explained: reckoned.explained }),
      _jsxs('section', {
        class: 'block',
        'aria-labelledby': 'w',
        children: [_jsx('h2', { id: 'w', children: 'Where the weight went' }), _jsx(Waterfall, { reckoned: reckoned })],
      }),
      _jsx(Steps, { why: why }),
      _jsx(Lines, { title: 'Stones', lines: stones }),
      _jsx(Lines, { title: 'What the customer is told', lines: customer }),
      insurer.length > 0 &&
        _jsxs('details', {
          class: 'block',
          children: [
            _jsx('summary', { children: 'For an insurer: every reading, its balance and its day' }),
            _jsx(List, { lines: insurer }),
          ],
        }),
    ],
  });
}
function headOf({ closed, unknownSince }, { suspects }) {
  if (!closed || closed.verdict === 'not checked') return unknownSince === null ? 'Not checked by weight yet' : 'What cannot be known';
  if (closed.verdict === 'does not agree') return 'Why does it not agree?';
  if (closed.verdict === 'weigh again') return 'Weigh again';
  return suspects.length > 0 ? 'It agrees as a whole, but not step by step' : 'It agrees, as far as the balance can tell';
}
function Causes({ why, job, explained }) {
  return _jsxs('section', {
    class: 'block causes',
    'aria-labelledby': 'c',
    children: [
      _jsx('h2', { id: 'c', children: 'What would explain it' }),
      why.slips.length > 0 &&
        _jsxs(_Fragment, {
          children: [
            _jsx('p', { children: 'One plain slip would explain the whole gap. It is one of these, or none:' }),
            _jsx(List, { lines: why.slips }),
          ],
        }),
      why.suspects.length > 0 &&
        _jsxs(_Fragment, {
          children: [
            _jsx('p', {
              children:
                why.suspects.length === 1 ? 'The figures point to this:' : 'The figures point to one of these, the likeliest first:',
            }),
            _jsx(List, { lines: why.suspects }),
          ],
        }),
      why.weighAgain.length > 0 &&
        _jsxs(_Fragment, { children: [_jsx('h3', { children: 'What to do now' }), _jsx(List, { lines: why.weighAgain })] }),
      _jsxs('p', {
        children: [
          'Found a slip? Open its entry and correct it: the wrong figure stays readable, the right one counts. Found the cause?',
          ' ',
          _jsx('a', { href: `/jobs/${job}/write/difference_explained`, children: 'Write down why it did not agree' }),
          '.',
          explained && ' Somebody has done so already.',
        ],
      }),
    ],
  });
}
function List({ lines }) {
  return _jsx('ul', { class: 'said', children: lines.map((line) => _jsx('li', { children: line })) });
}
function Lines({ title, lines }) {
  if (lines.length === 0) return null;
  return _jsxs('section', { class: 'block', children: [_jsx('h2', { children: title }), _jsx(List, { lines: lines })] });
}
