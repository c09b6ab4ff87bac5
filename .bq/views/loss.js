import { Fragment as _Fragment, jsx as _jsx, jsxs as _jsxs } from 'hono/jsx/jsx-runtime';
// Is our loss ordinary, or creeping? One chart for each bench, work and metal; for the owner alone, and of benches, never of persons.
import { Run } from './charts/run.js';
import { CheckedJobs } from './parts/checked-jobs.js';
export function LossView({ charts, note }) {
  return _jsxs(_Fragment, {
    children: [
      _jsxs('section', {
        class: 'head',
        children: [
          _jsx('h1', { children: 'Loss' }),
          _jsx('p', { class: 'soft', children: note }),
          _jsxs('p', {
            children: [
              _jsx('a', { href: '/owner/weights', children: 'The jobs of a period' }),
              ' \u00B7 ',
              _jsx('a', { href: '/flow', children: 'Metal through the shop' }),
            ],
          }),
        ],
      }),
      charts.length === 0 &&
        _jsx('p', {
          class: 'sentence',
          children: 'Too few jobs to judge (0 of 20). A job counts once its work is finished and it was weighed in and out.',
        }),
      charts.map((chart) => _jsx(ChartSection, { chart: chart })),
    ],
  });
}
function ChartSection({ chart: { title, sentence, isOff, more, losses, usual, sums, rows } }) {
  return _jsxs('section', {
    class: 'block',
    children: [
      _jsx('h2', { children: title }),
      _jsx('p', { class: isOff ? 'off-words' : 'sentence', children: sentence }),
      more.map((words) => _jsx('p', { children: words })),
      sums &&
        _jsxs(_Fragment, {
          children: [
            _jsx('h3', { children: 'Loss of each job, in milligrams to the gram worked' }),
            _jsx(Run, { title: `${title}: loss of each job`, points: losses, lines: [{ at: usual, words: 'usual here', isLimit: false }] }),
            _jsx('h3', { children: 'How far losses have run above usual' }),
            _jsx(Run, {
              title: `${title}: running sum above usual, gains dashed`,
              points: sums.points,
              lines: [{ at: sums.limit, words: 'look into it', isLimit: true }],
            }),
          ],
        }),
      _jsxs('details', { children: [_jsx('summary', { children: 'The jobs in figures' }), _jsx(CheckedJobs, { rows: rows })] }),
    ],
  });
}
