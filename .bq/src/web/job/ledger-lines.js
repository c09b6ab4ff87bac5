// The lines of a ledger as a page shows them: what was said, by whom, when; corrections joined to what they correct.
import { correctionsIn, factsOf, patchedData } from '../../ledger/corrections.js';
import { entryType, openData, readingsIn } from '../../ledger/registry.js';
import { withCorrections } from '../../queries/entries.js';
import { formatInstant } from '../../units/dates.js';
import { readingWords } from '../../weighing/reading.js';
import { namer } from './words.js';

const LATE_MS = 15 * 60_000;
/** The lines of these entries, in their order. */
export async function ledgerLines(web, policy, kept) {
  const corrections = correctionsIn(kept);
  const name = await namer(
    web,
    kept.flatMap(({ leaf }) => [leaf.by, ...Object.values(leaf.data).filter((value) => typeof value === 'string')]),
  );
  const correctedBy = new Map();
  for (const { leaf, seq } of kept) {
    for (const one of factsOf(leaf)) if (one.fact === 'correction') correctedBy.set(one.of, [...(correctedBy.get(one.of) ?? []), seq]);
  }
  return kept.map(({ leaf, seq, hash }) => {
    const entry = entryType(leaf.type, leaf.ver);
    const data = patchedData(leaf, corrections.get(hash));
    const weightOf = (of) =>
      readingsIn(entry, of)
        .map(({ reading }) => readingWords(reading))
        .join(', ');
    const target = factsOf(leaf).find(({ fact }) => fact === 'correction');
    return {
      seq,
      hash,
      type: leaf.type,
      said: entry.say(data, name),
      weight: weightOf(data),
      first: corrections.has(hash) ? { said: entry.say(openData(leaf), name), weight: weightOf(openData(leaf)) } : null,
      by: name(leaf.by),
      at: formatInstant(leaf.at, policy.zone),
      late: leaf.at - leaf.occurredAt > LATE_MS ? formatInstant(leaf.occurredAt, policy.zone) : null,
      correctedBy: correctedBy.get(hash) ?? [],
      corrects: target ? Number(leaf.data.seq) : null,
    };
  });
}
/** The lines of a page of a longer ledger, in their order: what corrects them is read with them and not shown. */
export async function shownLines(web, policy, kept) {
  const shown = new Set(kept.map(({ seq }) => seq));
  return (await ledgerLines(web, policy, await withCorrections(web.store, kept))).filter(({ seq }) => shown.has(seq));
}
