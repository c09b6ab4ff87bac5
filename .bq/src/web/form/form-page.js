import { EntryForm } from '../../../views/entry-form.js';
import { controlIn, formIn } from '../../book/us-words.js';
import { authNeeded } from '../../ledger/authority.js';
import { entryType } from '../../ledger/registry.js';
import { thingAt } from '../../queries/things.js';
import { formCautions } from '../job/cautions.js';
import { policyFor, whoAsks } from '../session/context.js';
import { draftTyped } from './drafts.js';
import { expectedWords, showForm } from './form.js';
import { respond } from './negotiate.js';
/** Shows the form, empty, prefilled or with what was typed and what is wrong. */
export async function showFormPage(web, c, of, said = {}) {
  const { problems = [], asked, since = [], asksNow } = said;
  const typed = (await draftTyped(web, c)) ?? said.typed;
  const { words } = policyFor(c);
  const { form, hidden } = await showForm(web, c, of.fields, {
    ...(of.job ? { job: of.job } : {}),
    ...(typed ? { typed } : {}),
    ...(asked === undefined ? {} : { asked }),
    ...(of.named ? { named: of.named } : {}),
    problems,
  });
  const wording = formIn(words, of.form);
  const fields = shownFields(of, wording, hidden, words);
  const expected = await expectedBeside(web, of, form, policyFor(c).parameters);
  return respond(c, {
    title: wording.title,
    ...(of.current === undefined ? {} : { current: of.current }),
    status: since.length > 0 ? 409 : problems.length > 0 ? 422 : 200,
    json: { ...jsonOf(of, fields), hidden: Object.fromEntries(hidden), problems, since },
    body: EntryForm({
      ...{
        title: wording.title,
        action: of.action,
        button: of.readBack ? 'Read it back' : (wording.button ?? 'Write the entry'),
        fields,
        since,
      },
      ...(wording.sections ? { sections: wording.sections } : {}),
      form: {
        ...form,
        expected,
        ...(wording.often ? { often: wording.often } : {}),
        ...(of.days ? { days: of.days } : {}),
      },
      hidden: [...hidden.filter(([name]) => !of.extra?.some(([other]) => other === name)), ...(of.extra ?? [])],
      cautions: await formCautions(web, c, of, typed),
      asks: of.readBack ? 'session' : (asksNow ?? asksOf(of, c)),
      late: of.late ?? false,
      above: of.above,
      below: of.below,
    }),
  });
}
/** What is typed again to sign for it: as the form says, or as the entry that it writes does. */
export const asksOf = ({ asks, entry }, c) =>
  asks ?? (entry === undefined ? 'session' : authNeeded(entryType(entry), { by: whoAsks(c).id }));
const shownFields = (of, wording, hidden, words) =>
  Object.entries(of.fields)
    .filter(([name]) => ![...hidden, ...(of.extra ?? [])].some(([other]) => other === name))
    .map(([name, { control, mayBeMissing }]) => ({
      name,
      label: wording.labels[name] ?? name,
      hint: wording.hints?.[name],
      optional: mayBeMissing,
      control: controlIn(words, control),
    }));
const jsonOf = ({ action, form }, fields) => ({
  title: form.title,
  action,
  fields: fields.map(({ name, label }) => ({ name, label })),
});
/** What is expected on the pan of the things that a form weighs whole, where each is one thing; beside no other weight. */
async function expectedBeside(web, { form: { weighs = {} }, extra = [] }, { things, typed }, parameters) {
  const beside = {};
  for (const [field, of] of Object.entries(weighs)) {
    const choices = things[of ?? ''] ?? [];
    const only = extra.find(([name]) => name === of)?.[1] ?? (choices.length === 1 ? choices[0]?.[0] : typed.get(of ?? '')?.[0]);
    const thing = only ? await thingAt(web.store, only) : null;
    const words = thing && expectedWords(thing, parameters);
    if (words !== null) beside[field] = words;
  }
  return beside;
}
/** What is typed to sign for something: never shown again, never kept. */
export const SECRETS = ['pin', 'password'];
export const without = (posted, names) => new Map([...posted].filter(([name]) => !names.includes(name)));
