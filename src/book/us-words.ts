// UK words into US ones, for a shop that chose them: one map for labels, choices, slips and sentences. Stored codes never change.
import type { Fields, Form } from './entry.ts';
import { type Control, memberNamed } from './values.ts';

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

/** Stand around what somebody typed, inside a sentence of ours: private-use characters, which no form takes and no page shows. */
const [OPENS, CLOSES] = ['\uE0F0', '\uE0F1'];
const MARKS = new RegExp(`[${OPENS}${CLOSES}]`, 'g');
const TYPED = new RegExp(`${OPENS}[^${CLOSES}]*${CLOSES}`, 'g');

/** What somebody typed, marked so that it is never put in other words. */
export const typed = (text: string): string => `${OPENS}${text.replace(MARKS, '')}${CLOSES}`;

/** The same data with every text that was typed marked, however deep its control puts it; for a sentence that is put in the words of the country. */
export const markTyped = <D extends Readonly<Record<string, unknown>>>(
  fields: Readonly<Record<string, { readonly control: Control }>>,
  data: D,
): D => Object.fromEntries(Object.entries(data).map(([name, value]) => [name, marked(fields[name]?.control, value)])) as D;

function marked(control: Control | undefined, value: unknown): unknown {
  if (control?.kind === 'text' && typeof value === 'string') return typed(value);
  if (control?.kind === 'list' && Array.isArray(value)) return value.map((one) => marked(control.of, one));
  if (control?.kind !== 'group' || typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([name, one]) => [name, marked(memberNamed(control, name)?.control, one)]));
}

/** The text in the words of the country: "18ct gold · 750" is "18K gold · 750" in the US, a claw is a prong; what is marked as typed stays, and its marks go. */
export function wordsIn(words: Words, text: string): string {
  const ours = text.split(TYPED).map((part) => (words === 'us' ? inUs(part) : inUk(part)));
  const theirs = [...text.matchAll(TYPED)].map(([part]) => part.slice(1, -1));
  return ours.map((part, n) => part + (theirs[n] ?? '')).join('');
}
const inUs = (text: string): string => text.replace(/\b(\d{1,2})ct\b/g, '$1K').replace(UK_WORD, (uk) => TO_US.get(uk) ?? uk);
/** A few of our own words are those of the US: karats of gold, as calculations count them. */
const inUk = (text: string): string =>
  text.replace(/\b(\d{1,2})K\b/g, '$1ct').replace(/\b([Kk])arat/g, (_, k: string) => (k === 'K' ? 'Carat' : 'carat'));

/** The same, with every text in it in the words of the country, however deep. */
export function allIn<T>(words: Words, value: T): T {
  if (typeof value === 'string') return wordsIn(words, value) as T;
  if (Array.isArray(value)) return value.map((one: unknown) => allIn(words, one)) as T;
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([name, one]) => [name, allIn(words, one)])) as T;
}

/** A form's title, labels, hints, headings and button in the words of the country. */
export function formIn<F extends Fields>(words: Words, form: Form<F>): Form<F> {
  const inWords = (said: Readonly<Record<string, string | undefined>>) =>
    Object.fromEntries(Object.entries(said).map(([name, text]) => [name, text === undefined ? text : wordsIn(words, text)]));
  return {
    ...form,
    title: wordsIn(words, form.title),
    labels: inWords(form.labels) as Form<F>['labels'],
    ...(form.hints ? { hints: inWords(form.hints) as NonNullable<Form<F>['hints']> } : {}),
    ...(form.button === undefined ? {} : { button: wordsIn(words, form.button) }),
    ...(form.sections ? { sections: form.sections.map(([heading, ...rest]) => [wordsIn(words, heading), ...rest] as const) } : {}),
  };
}

/** A control's choices and the labels of its members in the words of the country. */
export function controlIn(words: Words, control: Control): Control {
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
