// A posted form, whichever it is: read, read back where both must agree, recorded, and shown again with what is wrong, or followed by
// where to look next.
import type { Posted } from '../../book/codec.ts';
import type { Control } from '../../book/values.ts';
import { photosNotHere, withPhotos } from '../job/photos.ts';
import { wholeNumber } from '../session/address.ts';
import type { Ctx, Web } from '../session/context.ts';
import { type FormOf, READ_BACK_TERMS, SECRETS, showFormPage, type Values, without } from './form-page.ts';
import { goTo, wantsJson } from './negotiate.ts';
import { first, readPosted } from './posted.ts';
import { showReadBack } from './read-back.ts';
import { tryOut } from './try-out.ts';
import { type Outcome, readFields, readOccurredAt, record } from './write.ts';

/** Takes a posted form to the ledger and answers with the next page, or the same form with everything that was typed. */
export async function submitForm(web: Web, c: Ctx, of: FormOf, sent: Posted): Promise<Response> {
  const posted = withOtherDays(of, sent);
  const list = first(posted, ADD_ROW);
  if (list !== '') return showFormPage(web, c, of, { typed: withRow(posted, list) });
  if (posted.has('change')) return showFormPage(web, c, of, { typed: without(posted, [...AGREEING, 'change']) });
  const { data, problems } = readFields(of.fields, posted, c);
  const occurred = of.late ? readOccurredAt(posted, c) : { problems: [] };
  const wrong = [...problems, ...occurred.problems];
  const all = wrong.length > 0 ? wrong : [...(await photosNotHere(web, of.fields, data)), ...(of.check?.(data) ?? [])];
  if (all.length > 0) return showFormPage(web, c, of, { typed: without(posted, AGREEING), problems: all });
  const asked = of.ask?.(data);
  if (asked) return showFormPage(web, c, of, { typed: without(posted, AGREEING), problems: [asked], asked: asked.field });
  const at = 'at' in occurred && occurred.at !== undefined ? { occurredAt: occurred.at } : {};
  const lines = of.lines(data).map((one) => ({ ...one, ...at }));
  const terms = of.terms && (of.readBack ? first(posted, READ_BACK_TERMS) : of.terms.name);
  const beside = { ...(of.job ? { job: of.job } : {}), ...(terms === undefined ? {} : { terms }) };
  if (!of.readBack || (posted.has('agreed') && terms !== '')) {
    return answer(web, c, of, posted, data, await record(web, c, posted, lines, beside));
  }
  const outcome = await tryOut(web, c, posted, lines, of.job);
  return outcome ? answer(web, c, of, posted, data, outcome) : showReadBack(c, of, posted, data);
}

/** Reads the body with its photographs, then takes it to the ledger. */
export async function receiveForm(web: Web, c: Ctx, of: FormOf): Promise<Response> {
  const { posted, problems } = await withPhotos(web, await readPosted(c, asksForPhoto(of) ? 'photographs' : 'text'));
  return problems.length > 0 ? showFormPage(web, c, of, { typed: posted, problems }) : submitForm(web, c, of, posted);
}

async function answer(web: Web, c: Ctx, of: FormOf, posted: Posted, data: Values, outcome: Outcome): Promise<Response> {
  if ('done' in outcome) {
    const { from, size } = outcome.done;
    const next = await of.next(from, posted);
    return wantsJson(c) ? c.json({ written: { from, size }, next }, 201) : goTo(c, next);
  }
  const typed = without(posted, AGREEING);
  if ('reused' in outcome) {
    const { from } = outcome.reused;
    const say = `This form was already written as entry ${from}. Correct that entry, or open a fresh form.`;
    return showFormPage(web, c, of, { typed, problems: [{ field: '', say }] });
  }
  if ('conflict' in outcome) return showFormPage(web, c, of, { typed: withoutSeen(typed), since: outcome.conflict });
  const asked = outcome.asked?.field;
  const isUnderOthers = outcome.problems.some(({ field }) => field === 'terms');
  const asksNow = (['pin', 'password'] as const).find((secret) => outcome.problems.some(({ field }) => field === secret));
  if ((asksNow || isUnderOthers) && of.readBack) return showReadBack(c, of, posted, data, outcome.problems);
  return showFormPage(web, c, of, {
    typed,
    problems: outcome.problems,
    ...(asksNow ? { asksNow } : {}),
    ...(asked === undefined ? {} : { asked }),
  });
}

/** What is said by agreeing, and is no part of what was typed. */
const AGREEING: readonly string[] = [...SECRETS, 'agreed', READ_BACK_TERMS];

const asksForPhoto = ({ fields }: FormOf): boolean => Object.values(fields).some(({ control }) => holdsFile(control));

function holdsFile(control: Control): boolean {
  if (control.kind === 'list') return holdsFile(control.of);
  if (control.kind === 'group') return Object.values(control.members).some((member) => holdsFile(member.control));
  return control.kind === 'file';
}

const withoutSeen = (posted: Posted): Posted => new Map([...posted].filter(([name]) => !name.startsWith('seen.')));

/** The name of the button that asks for a row; no field may have it. */
const ADD_ROW = 'addRow';

/** One more row of a list, and nothing of the button that asked for it. */
const withRow = (posted: Posted, list: string): Posted =>
  new Map([...without(posted, [ADD_ROW]), [`rows.${list}`, [String((wholeNumber(first(posted, `rows.${list}`)) ?? 0) + 1)]]]);

/** A day is posted as a chip and as any other day beside it: the first that says something holds. */
const withOtherDays = ({ fields }: FormOf, posted: Posted): Posted =>
  new Map(
    [...posted].map(([name, values]) => [
      name,
      Object.hasOwn(fields, name) && fields[name]?.control.kind === 'day' ? values.filter(Boolean).slice(0, 1) : values,
    ]),
  );
