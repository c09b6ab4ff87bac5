// The record letter: one scroll without a word of jargon, the same on the screen, in print and in the file that goes home.
import { raw } from 'hono/html';
import { Fragment as _Fragment, jsx as _jsx, jsxs as _jsxs } from 'hono/jsx/jsx-runtime';
import { Beam } from './parts/beam.js';
import { Corrections, Crossings, Stones, ThenAndNow, Timeline } from './parts/letter.js';
export function LetterPage({ shown, job, told, src }) {
  return _jsxs(_Fragment, {
    children: [
      _jsxs('p', {
        class: 'act no-print',
        children: [
          _jsx('a', { class: 'button', href: `/jobs/${job}/letter.html${told ? '?told=yes' : ''}`, children: 'Download the letter' }),
          _jsxs('a', { href: `/jobs/${job}`, children: ['Back to ', shown.bag] }),
        ],
      }),
      _jsx(LetterBody, { shown: shown, src: src }),
    ],
  });
}
export function LetterFile({ shown, css, check, src }) {
  return _jsxs('html', {
    lang: 'en-GB',
    children: [
      _jsxs('head', {
        children: [
          _jsx('meta', { charset: 'utf-8' }),
          _jsx('meta', { name: 'viewport', content: 'width=device-width,initial-scale=1' }),
          _jsx('meta', { name: 'robots', content: 'noindex' }),
          _jsx('title', { children: `Record letter ${shown.bag} · ${shown.shop}` }),
          _jsx('style', { children: raw(css) }),
        ],
      }),
      _jsx('body', {
        children: _jsxs('main', {
          children: [
            _jsx(LetterBody, { shown: shown, src: src }),
            _jsx('script', { type: 'application/json', id: 'check-data', children: raw(check) }),
          ],
        }),
      }),
    ],
  });
}
export function LetterBody({ shown, src }) {
  return _jsxs('article', {
    class: 'letter',
    children: [
      _jsx(LetterFacts, { shown: shown, src: src }),
      _jsxs('section', {
        children: [
          _jsx('h2', { children: 'Check this letter' }),
          _jsxs('p', {
            children: [
              _jsx('b', { children: 'NOT CHECKED.' }),
              ' This page shows what the ledger says; it has not been checked by anything but the shop\u2019s own program. The file you can download carries the ',
              shown.entries,
              ' entries of this job as they were written, the place of each in the signed record, and the shop\u2019s public key. Keep the file. Everything in it follows published standards (RFC 9162 for the tree, C2SP for the signed checkpoint), so that whoever knows them can check it without asking us. Names, values and the shop\u2019s own notes stand in those entries sealed: as digests, not as words.',
            ],
          }),
          _jsx('h2', { children: 'What this letter does not show' }),
          _jsx('p', {
            children:
              'It does not show that what was written was true when it was written. Two things that weigh the same need not be the same thing: weights, photographs, marks and what you saw at the loupe stand together. No outside witness has signed this record, so it cannot show that nobody keeps a second one.',
          }),
          _jsx('h2', { children: 'Your insurance' }),
          _jsx('p', {
            children:
              'Your valuation and insurance schedule need renewing: the piece is not what it was when they were written. This letter is no valuation.',
          }),
        ],
      }),
    ],
  });
}
/** What the screen turned to the customer shows, and the letter before its small print. */
export function LetterFacts({ shown, src }) {
  const { letter, moments } = shown;
  return _jsxs(_Fragment, {
    children: [
      _jsxs('header', {
        children: [
          _jsxs('p', {
            class: 'soft',
            children: [shown.shop, ' \u00B7 bag ', _jsx('b', { children: shown.bag }), ' \u00B7 ', shown.issued],
          }),
          _jsx('h1', { children: shown.title }),
          _jsx('p', { class: 'sentence', children: letter.sentence }),
        ],
      }),
      _jsx(ThenAndNow, { photos: shown.photos, src: src }),
      _jsxs('section', {
        children: [
          _jsx('h2', { children: 'The weights' }),
          _jsx(Beam, { ...letter.beam }),
          _jsx('dl', {
            class: 'numbers',
            children: letter.beam.numbers.map(({ what, weight }) =>
              _jsxs('div', { children: [_jsx('dd', { children: weight }), _jsx('dt', { children: what })] }),
            ),
          }),
          _jsx('p', { children: letter.beam.sentence }),
        ],
      }),
      _jsx(Stones, { stones: letter.stones }),
      _jsx(Crossings, { letter: letter }),
      _jsx(Timeline, { moments: moments }),
      _jsx(Corrections, { moments: moments }),
    ],
  });
}
/** The screen turned to the customer: her own things, and nothing of the shop's or of others'. */
export function CustomerFace({ shown, job, src }) {
  return _jsxs(_Fragment, {
    children: [
      _jsx('article', { class: 'letter', children: _jsx(LetterFacts, { shown: shown, src: src }) }),
      _jsx('p', { children: _jsx('a', { href: `/jobs/${job}`, children: 'Turn the screen back' }) }),
    ],
  });
}
