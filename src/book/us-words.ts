// UK words into US ones, for a shop that chose them: one map for labels, choices, slips and sentences. Stored codes never change.
import type { Fields, Form } from './entry.ts';
import type { Control } from './values.ts';

export type Words = 'uk' | 'us';

/** Longest first, since each is replaced where the ones before it have left it. Trade usage of both countries. */
const US: readonly (readonly [uk: string, us: string])[] = [
  ['re-tip claws', 'retip prongs'],
  ['re-claw', 'replace prongs'],
  ['re-head', 'replace head'],
  ['re-shank', 'reshank'],
  ['half-shank', 'half shank'],
  ['millgrain', 'milgrain'],
  ['collection slip', 'claim check'],
  ['bench skin', 'bench pan'],
  ['skin', 'bench pan'],
  ['lemel', 'filings'],
  ['claws', 'prongs'],
  ['claw', 'prong'],
  ['collet', 'bezel cup'],
  ['assay office', 'assay office (UK)'],
  ['sponsor’s mark', 'maker’s mark'],
  ['fineness mark', 'quality mark'],
  ['girdle number', 'laser inscription number'],
  ['comeback', 'redo'],
  ['trade customer', 'trade account'],
  ['docket', 'work order'],
  ['brooch', 'pin'],
  ['mount', 'mounting'],
  ['outwork', 'trade work'],
  ['colour', 'color'],
  ['grey', 'gray'],
  ['jewellery', 'jewelry'],
  ['jeweller', 'jeweler'],
  ['enrol', 'enroll'],
  ['centre', 'center'],
  ['fixed price', 'firm quote'],
  ['take out stones', 'unset stones'],
  ['recorded post', 'certified mail'],
  ['by post', 'by mail'],
  ['post or courier', 'mail or courier'],
  ['telephone', 'phone'],
];
const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);
const UK_WORD = new RegExp(`(?<![\\p{L}-])(?:${US.map(([uk]) => `${uk}|${capital(uk)}`).join('|')})(?![\\p{L}])`, 'gu');
const TO_US = new Map(US.flatMap(([uk, us]) => [[uk, us] as const, [capital(uk), capital(us)] as const]));

/** The text in the words of the country: "18ct gold · 750" is "18K gold · 750" in the US, a claw is a prong. */
export function wordsIn(words: Words, text: string): string {
  if (words === 'uk') return text;
  return text.replace(/\b(\d{1,2})ct\b/g, '$1K').replace(UK_WORD, (uk) => TO_US.get(uk) ?? uk);
}

/** A form's title, labels, hints, headings and button in the words of the country. */
export function formIn<F extends Fields>(words: Words, form: Form<F>): Form<F> {
  if (words === 'uk') return form;
  const inUs = (said: Readonly<Record<string, string | undefined>>) =>
    Object.fromEntries(Object.entries(said).map(([name, text]) => [name, text === undefined ? text : wordsIn(words, text)]));
  return {
    ...form,
    title: wordsIn(words, form.title),
    labels: inUs(form.labels) as Form<F>['labels'],
    ...(form.hints ? { hints: inUs(form.hints) as NonNullable<Form<F>['hints']> } : {}),
    ...(form.button === undefined ? {} : { button: wordsIn(words, form.button) }),
    ...(form.sections ? { sections: form.sections.map(([heading, ...rest]) => [wordsIn(words, heading), ...rest] as const) } : {}),
  };
}

/** A control's choices and the labels of its members in the words of the country. */
export function controlIn(words: Words, control: Control): Control {
  if (words === 'uk') return control;
  switch (control.kind) {
    case 'choice':
    case 'choices':
      return {
        ...control,
        options: Object.fromEntries(Object.entries(control.options).map(([code, said]) => [code, wordsIn(words, said)])),
      };
    case 'list':
      return { ...control, of: controlIn(words, control.of) };
    case 'group': {
      const members = Object.entries(control.members).map(([name, member]) => [
        name,
        { ...member, label: wordsIn(words, member.label), control: controlIn(words, member.control) },
      ]);
      return { ...control, members: Object.fromEntries(members) };
    }
    default:
      return control;
  }
}
