// What was typed, read aloud before it is written: both agree, or something is changed first.
import { ReadBack } from '../../../views/read-back.js';
import { wordsIn } from '../../book/us-words.js';
import { policyFor } from '../session/context.js';
import { asksOf, SECRETS, without } from './form-page.js';
import { respond } from './negotiate.js';
/** What was typed, read aloud, with everything kept; `problems` is a PIN that was wrong. */
export function showReadBack(c, of, posted, data, problems = []) {
  const { words } = policyFor(c);
  const sentences = (of.readBack?.(data) ?? []).map((sentence) => wordsIn(words, sentence));
  return respond(c, {
    title: 'Read it back',
    ...(of.current === undefined ? {} : { current: of.current }),
    status: problems.length > 0 ? 422 : 200,
    json: { readBack: sentences, problems },
    body: ReadBack({
      ...{ sentences, action: of.action, problems },
      button: wordsIn(words, of.form.button ?? 'We agree: write it'),
      ...(of.also ? { also: of.also } : {}),
      typed: without(posted, [...SECRETS, 'agreed']),
      asks: asksOf(of, c),
    }),
  });
}
