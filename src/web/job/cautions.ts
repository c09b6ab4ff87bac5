// Which of the usual cautions a form or a job shows: those an entry names, by the shop's country, and those its own ledger calls for.
import type { Posted } from '../../book/codec.ts';
import type { EntryName } from '../../entries/index.ts';
import type { Thing } from '../../ledger/thing.ts';
import { additionCaution, careStepsOf, isMarked, type Planned, stoneCautions } from '../../projections/cautions.ts';
import { told } from '../../projections/told.ts';
import { entriesOf } from '../../queries/entries.ts';
import { CAUTIONS, type CautionId } from '../../trade/caution-table.ts';
import type { CareStep } from '../../trade/stone-care-table.ts';
import { netNg, type Reading } from '../../weighing/reading.ts';
import { jobThings } from '../form/form.ts';
import { first } from '../form/posted.ts';
import { type Fieldset, readFields } from '../form/write.ts';
import { type Ctx, policyFor, type Web } from '../session/context.ts';

const SHOWN: Readonly<Record<string, readonly string[]>> = {
  GB: ['anywhere', 'UK', 'EU/UK', 'UK/EU'],
  US: ['anywhere', 'US', 'US, varies'],
};

/** The text of a caution with its source, or null where it does not concern this country; elsewhere only what holds anywhere. */
export function cautionWords(id: string, country: string): string | null {
  const caution = Object.hasOwn(CAUTIONS, id) ? CAUTIONS[id as CautionId] : undefined;
  if (!caution) throw new Error(`no caution ${id}`);
  return (SHOWN[country] ?? ['anywhere']).includes(caution.jurisdiction) ? `${caution.text} (${caution.source})` : null;
}

const ALL_WORK = ['clean', 'solder', 'plate', 'laser', 'set'];
const agreedWork = (job: Thing): readonly string[] => (job.says.work ?? '').split(' ').filter((one) => one !== '');

/** What each entry is about to do to a stone in its seat; joining follows how the work was agreed. */
const STEPS: Readonly<Partial<Record<EntryName, (job: Thing, typed: Posted) => readonly CareStep[]>>> = {
  work_agreed: (_job, typed) => careStepsOf(typed.get('steps')?.filter((step) => step !== '') ?? ALL_WORK),
  inspected_before_work: (job) => careStepsOf(agreedWork(job)),
  piece_cleaned: () => ['ultrasonic', 'steam', 'pickle'],
  piece_sized: (job) => careStepsOf(['size-up', ...agreedWork(job)]),
  metal_added: (job) => careStepsOf(['size-up', ...agreedWork(job)]),
  stone_set: () => ['hammerSetting'],
};
/** Cautions that are shown only when the ledger calls for them. */
const CALLED_FOR: readonly string[] = ['hallmark-addition', 'hallmark-deface'] satisfies CautionId[];

export interface CautionedForm {
  readonly fields: Fieldset;
  readonly form: { readonly cautions?: readonly CautionId[] };
  readonly job?: Thing;
  readonly entry?: string;
}

/** The cautions of a form, its entry's own before those of this job. */
export async function formCautions(web: Web, c: Ctx, of: CautionedForm, typed: Posted = new Map()): Promise<readonly string[]> {
  const { country } = policyFor(c);
  const own = (of.form.cautions ?? []).filter((id) => !CALLED_FOR.includes(id)).flatMap((id) => cautionWords(id, country) ?? []);
  if (!of.job || of.entry === undefined) return own;
  const things = await jobThings(web, of.job.id);
  const steps = STEPS[of.entry as EntryName]?.(of.job, typed) ?? [];
  const marked = things.some((thing) => thing.kind === 'piece' && !thing.gone && isMarked(thing));
  const defaced = of.entry === 'metal_cut' && marked ? cautionWords('hallmark-deface', country) : null;
  const shows = of.form.cautions?.includes('hallmark-addition') || of.entry === 'metal_cut';
  const added = marked && shows ? await jobCautions(web, c, of.job, things, plannedIn(of, typed, c)) : [];
  return [...stoneCautions(things, steps), ...added, ...(defaced ? [defaced] : []), ...own];
}

/** What the ledger's own weights call for on a job, in the countries whose law it is. */
export async function jobCautions(web: Web, c: Ctx, job: Thing, things: readonly Thing[], planned?: Planned): Promise<readonly string[]> {
  const law = cautionWords('hallmark-addition', policyFor(c).country);
  const pieces = things.filter((thing) => thing.kind === 'piece' && !thing.gone && isMarked(thing));
  if (law === null || pieces.length === 0) return [];
  const facts = told(await entriesOf(web.store, job.id)).flatMap((entry) => entry.facts);
  return pieces.flatMap((piece) => additionCaution(piece, agreedWork(job), facts, planned) ?? []).map((words) => `${words} ${law}`);
}

/** Metal that was typed and is not written yet. */
function plannedIn(of: CautionedForm, typed: Posted, c: Ctx): Planned | undefined {
  if (of.entry !== 'metal_added' || first(typed, 'weight.text') === '') return undefined;
  const reading = readFields(of.fields, typed, c).data.weight as Reading | undefined;
  const ng = reading ? netNg(reading) : null;
  return ng === null ? undefined : { metal: first(typed, 'metal'), ng };
}
