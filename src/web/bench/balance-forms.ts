// The two forms of a balance's own page: the daily check, and ten readings of one weight.
import { ENTRIES } from '../../entries/index.ts';
import { readCorrected } from '../../ledger/corrections.ts';
import type { Thing } from '../../ledger/thing.ts';
import { formatMassWithUnit, type MassNg, type MassUnit, massNg } from '../../units/mass.ts';
import { repeatabilityOf } from '../../weighing/worth.ts';
import type { FormOf } from '../form/form-page.ts';
import type { Fieldset } from '../form/write.ts';
import { balanceStory } from '../job/balance-story.ts';
import type { Web } from '../session/context.ts';

export const TEN = 10;

/** A mass with more places than a balance shows, as s and deviations are said. */
export const fine = (ng: number, unit: MassUnit): string => formatMassWithUnit(massNg(Math.round(ng)), unit, unit === 'ct' ? 5 : 4);

/** The daily check of this balance. */
export function checkOf({ id, says }: Thing): FormOf {
  const { fields, form } = ENTRIES.balance_checked;
  const { balance: _, ...asked } = fields;
  return {
    ...shared(id),
    entry: 'balance_checked',
    fields: asked as Fieldset,
    form: { ...form, title: `Check ${says.name ?? 'the balance'}` },
    action: `/balances/${id}/check`,
    lines: (data) => [{ type: 'balance_checked', data: { balance: id, ...data } }],
  };
}

/** What a form shows before anybody types. */
export type Typed = Promise<readonly (readonly [name: string, texts: readonly string[]])[]>;

/** The daily check is made with one weight: its name and its paper, as typed at the last check of this balance. */
export async function weightLastTime({ store }: Web, { id }: Thing): Typed {
  const { kept } = await balanceStory(store);
  const last = readCorrected(kept).findLast(({ leaf, data }) => leaf.type === 'balance_checked' && data.balance === id);
  return ['nominal', 'certifiedG', 'certificate'].flatMap((name) => {
    const said = last?.data[name];
    return typeof said === 'string' ? [[name, [said]] as const] : [];
  });
}

/** Ten readings of one weight, with s read back before they are written. */
export function tenReadingsOf({ id, says, balance }: Thing): FormOf {
  const { fields } = ENTRIES.balance_calibrated;
  const unit = balance?.unit ?? 'g';
  return {
    ...shared(id),
    entry: 'balance_calibrated',
    fields: { readings: { ...fields.readings, mayBeMissing: false } } as Fieldset,
    form: {
      title: `Ten readings on ${says.name ?? 'the balance'}`,
      labels: { readings: `What it showed each time, in ${unit}` },
      hints: { readings: 'One weight or piece, put on and taken off ten times, zero in between.' },
      button: 'Write the readings',
    },
    action: `/balances/${id}/repeatability`,
    readBack: ({ readings }) => [spreadWords(readings as readonly string[], unit, balance?.ranges[0]?.stepNg)],
    lines: (data) => [{ type: 'balance_calibrated', data: { balance: id, by: 'own', adjusted: 'not adjusted', ...data } }],
  };
}

const shared = (id: string) => ({ current: '/setup', late: true, next: () => `/balances/${id}` });

function spreadWords(readings: readonly string[], unit: MassUnit, stepNg: MassNg | undefined): string {
  const spread = repeatabilityOf(readings.join(' '), unit);
  if (!spread) return `${readings.length} readings, which are too few.`;
  const coarse = stepNg !== undefined && spread.sNg === 0 ? ' It never showed two figures: its spread is below what its step shows.' : '';
  return `${readings.length} readings: ${readings.join(', ')} ${unit}. Repeatability s = ${fine(spread.sNg, unit)}.${coarse}`;
}
