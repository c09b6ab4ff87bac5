// UK words into US ones. The pairs are trade usage of both countries, as sellers and trade schools there write them; carats and karats as
// the marking rules of both write them (UK Hallmarking Act 1973, schedule 2: parts per thousand; US 16 CFR 23.3: karat, "14K"), all from memory.
import { describe, expect, it } from 'vitest';
import type { Fields, Form } from '../../src/book/entry.ts';
import { METAL_WORDS } from '../../src/book/metals.ts';
import { controlIn, formIn, markTyped, typed, wordsIn } from '../../src/book/us-words.ts';
import type { Control } from '../../src/book/values.ts';
import { WORK_STEPS } from '../../src/book/work.ts';
import { ENTRIES } from '../../src/entries/index.ts';
import { SHEETS } from '../../src/sheets/index.ts';

/** What a US reader would stumble over. */
const UK_ONLY = /\b(claws?|collection slip|lemel|colou?red|colour|jewellery|jeweller|brooch|millgrain|docket|\d+ct|bench skin)\b/i;

function wordsOf(control: Control): readonly string[] {
  switch (control.kind) {
    case 'choice':
    case 'choices':
      return Object.values(control.options);
    case 'list':
      return wordsOf(control.of);
    case 'group':
      return Object.values(control.members).flatMap(({ label, control: inner }) => [label, ...wordsOf(inner)]);
    default:
      return [];
  }
}

describe('words', () => {
  it.each([
    ['18ct gold · 750', '18K gold · 750'],
    ['re-tip claws', 'retip prongs'],
    ['Claw worn, claws bent', 'Prong worn, prongs bent'],
    ['Collection slip', 'Claim check'],
    ['Weigh the lemel', 'Weigh the filings'],
    ['costume jewellery', 'costume jewelry'],
    ['Brooch', 'Pin'],
    ['millgrain', 'milgrain'],
  ])('of the UK are said the US way: %s', (uk, us) => {
    expect(wordsIn('us', uk)).toBe(us);
    expect(wordsIn('uk', uk)).toBe(uk);
  });
  it.each(['1.204 ct', 'clawed back', 'Clawson', 'mounted', 'a re-count'])('that only look like them stay: %s', (text) => {
    expect(wordsIn('us', text)).toBe(text);
  });
  it.each(['1ct diamond in claws', 'Grey mount, colour of claws', '18ct'])('that somebody typed stay in either country: %s', (text) => {
    for (const words of ['uk', 'us'] as const) expect(wordsIn(words, `${typed(text)}, re-tip claws`)).toMatch(text);
    expect(wordsIn('us', `${typed(text)}, re-tip claws`)).toBe(`${text}, retip prongs`);
  });
  it('that somebody typed are known by the field they were typed in, however deep', () => {
    const { fields, say } = ENTRIES.piece_received;
    const data = { description: '1ct in claws', parts: [{ part: 'mount', metal: 'gold-750' }], stones: 1, kind: 'ring' };
    expect(
      wordsIn(
        'us',
        say(markTyped(fields, data) as never, () => ''),
      ),
    ).toBe('Received: 1ct in claws, 1 stone, not weighed');
    expect(markTyped(fields, data).parts).toEqual([{ part: typed('mount'), metal: 'gold-750' }]);
  });
  it('of the US that we use ourselves are said the UK way there: 18K yellow', () => {
    expect(wordsIn('uk', 'Raise or lower a karat: 18K yellow')).toBe('Raise or lower a carat: 18ct yellow');
  });
  it('of the UK stand in the labels before they are put in US words', () => {
    const choices = Object.values(ENTRIES).flatMap(({ fields }) => Object.values(fields).flatMap(({ control }) => wordsOf(control)));
    expect(new Set(choices.filter((words) => UK_ONLY.test(words))).size).toBeGreaterThan(8);
  });
  it('of every metal keep their fineness', () => {
    for (const words of Object.values(METAL_WORDS)) expect(wordsIn('us', words).match(/\d{3}/)?.[0]).toBe(words.match(/\d{3}/)?.[0]);
    expect(
      Object.values(WORK_STEPS)
        .map((words) => wordsIn('us', words))
        .filter((words) => UK_ONLY.test(words)),
    ).toEqual([]);
  });
});

describe.each(Object.entries({ ...ENTRIES, ...SHEETS }))('the form of %s', (_, { fields, form }) => {
  it('has no word that only the UK uses, once it is put in US words', () => {
    const us: Form<Fields> = formIn('us', form as unknown as Form<Fields>);
    const headings = (us.sections ?? []).map(([heading]) => heading);
    const said = [us.title, us.button ?? '', ...Object.values(us.labels), ...Object.values(us.hints ?? {}), ...headings];
    const controls = Object.values(fields).flatMap(({ control }) => wordsOf(controlIn('us', control)));
    expect([...said, ...controls].filter((words) => UK_ONLY.test(words ?? ''))).toEqual([]);
  });
  it('keeps its stored codes', () => {
    for (const { control } of Object.values(fields)) {
      if (control.kind !== 'choice' && control.kind !== 'choices') continue;
      expect(Object.keys((controlIn('us', control) as typeof control).options)).toEqual(Object.keys(control.options));
    }
  });
});
