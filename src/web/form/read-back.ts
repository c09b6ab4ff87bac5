// What was typed, read aloud before it is written: both agree, or something is changed first.
import { ReadBack } from '../../../views/read-back.tsx';
import type { Posted, Problem } from '../../book/codec.ts';
import { markTyped, wordsIn } from '../../book/us-words.ts';
import { type Ctx, policyFor } from '../session/context.ts';
import { asksOf, type FormOf, READ_BACK_TERMS, SECRETS, type Values, without } from './form-page.ts';
import { respond } from './negotiate.ts';

/** What was typed, read aloud, with everything kept; `problems` is a PIN that was wrong. */
export function showReadBack(c: Ctx, of: FormOf, posted: Posted, data: Values, problems: readonly Problem[] = []): Promise<Response> {
  const { words } = policyFor(c);
  const said = of.readBack?.(markTyped(of.fields, data)) ?? [];
  const sentences = said.map((sentence) => wordsIn(words, sentence));
  return respond(c, {
    title: 'Read it back',
    ...(of.current === undefined ? {} : { current: of.current }),
    status: problems.length > 0 ? 422 : 200,
    json: { readBack: sentences, ...(of.terms ? { [READ_BACK_TERMS]: of.terms.name } : {}), problems },
    body: ReadBack({
      ...{ sentences, action: of.action, problems },
      button: wordsIn(words, of.form.button ?? 'We agree: write it'),
      ...(of.also ? { also: of.also } : {}),
      ...(of.terms ? { terms: of.terms } : {}),
      typed: new Map([
        ...without(posted, [...SECRETS, 'agreed', READ_BACK_TERMS]),
        ...(of.terms ? [[READ_BACK_TERMS, [of.terms.name]] as const] : []),
      ]),
      asks: asksOf(of, c),
    }),
  });
}
