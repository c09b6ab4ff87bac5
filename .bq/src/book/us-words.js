/** Longest first, since each is replaced where the ones before it have left it. Trade usage of both countries. */
const US = [
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
const capital = (text) => text.charAt(0).toUpperCase() + text.slice(1);
const UK_WORD = new RegExp(`(?<![\\p{L}-])(?:${US.map(([uk]) => `${uk}|${capital(uk)}`).join('|')})(?![\\p{L}])`, 'gu');
const TO_US = new Map(
  US.flatMap(([uk, us]) => [
    [uk, us],
    [capital(uk), capital(us)],
  ]),
);
/** The text in the words of the country: "18ct gold · 750" is "18K gold · 750" in the US, a claw is a prong. */
export function wordsIn(words, text) {
  if (words === 'uk') return text;
  return text.replace(/\b(\d{1,2})ct\b/g, '$1K').replace(UK_WORD, (uk) => TO_US.get(uk) ?? uk);
}
/** A form's title, labels, hints, headings and button in the words of the country. */
export function formIn(words, form) {
  if (words === 'uk') return form;
  const inUs = (said) =>
    Object.fromEntries(Object.entries(said).map(([name, text]) => [name, text === undefined ? text : wordsIn(words, text)]));
  return {
    ...form,
    title: wordsIn(words, form.title),
    labels: inUs(form.labels),
    ...(form.hints ? { hints: inUs(form.hints) } : {}),
    ...(form.button === undefined ? {} : { button: wordsIn(words, form.button) }),
    ...(form.sections ? { sections: form.sections.map(([heading, ...rest]) => [wordsIn(words, heading), ...rest]) } : {}),
  };
}
/** A control's choices and the labels of its members in the words of the country. */
export function controlIn(words, control) {
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
