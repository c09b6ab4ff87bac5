// The lines of a ledger as a page shows them: what was said, by whom, when; corrections joined to what they correct.

import type { LedgerLine } from '../../../views/parts/ledger.tsx';
import { markTyped, typed, wordsIn } from '../../book/us-words.ts';
import { readCorrected } from '../../ledger/corrections.ts';
import type { Kept } from '../../ledger/leaf.ts';
import { entryType, openData, readingsIn, type Values } from '../../ledger/registry.ts';
import { withCorrections } from '../../queries/entries.ts';
import { formatInstant } from '../../units/dates.ts';
import { readingWords } from '../../weighing/reading.ts';
import type { Policy, Web } from '../session/context.ts';
import { namer } from './words.ts';

const LATE_MS = 15 * 60_000;

/** The lines of these entries, in their order. */
export async function ledgerLines(web: Web, policy: Policy, kept: readonly Kept[]): Promise<readonly LedgerLine[]> {
  const all = readCorrected(kept);
  const name = await namer(
    web,
    kept.flatMap(({ leaf }) => [leaf.by, ...Object.values(leaf.data).filter((value) => typeof value === 'string')]),
  );
  const correctedBy = new Map<string, number[]>();
  for (const { seq, corrects } of all) if (corrects) correctedBy.set(corrects.of, [...(correctedBy.get(corrects.of) ?? []), seq]);
  return all.map(({ leaf, seq, hash, data, occurredAt, isCorrected, corrects }) => {
    const entry = entryType(leaf.type, leaf.ver);
    const weightOf = (of: Values) =>
      readingsIn(entry, of)
        .map(({ reading }) => readingWords(reading))
        .join(', ');
    const said = (of: Values) =>
      wordsIn(
        policy.words,
        entry.say(markTyped(entry.fields, of), (id) => typed(name(id))),
      );
    return {
      seq,
      hash,
      type: leaf.type,
      said: said(data),
      weight: weightOf(data),
      first: isCorrected ? { said: said(openData(leaf)), weight: weightOf(openData(leaf)) } : null,
      by: name(leaf.by),
      at: formatInstant(leaf.at, policy.zone),
      late: leaf.at - occurredAt > LATE_MS ? formatInstant(occurredAt, policy.zone) : null,
      correctedBy: correctedBy.get(hash) ?? [],
      corrects: corrects ? Number(leaf.data.seq) : null,
    };
  });
}

/** The lines of a page of a longer ledger, in their order: what corrects them is read with them and not shown. */
export async function shownLines(web: Web, policy: Policy, kept: readonly Kept[]): Promise<readonly LedgerLine[]> {
  const shown = new Set(kept.map(({ seq }) => seq));
  return (await ledgerLines(web, policy, await withCorrections(web.store, kept))).filter(({ seq }) => shown.has(seq));
}
