import { additionCaution, careStepsOf, isMarked, stoneCautions } from '../../projections/cautions.js';
import { told } from '../../projections/told.js';
import { entriesOf } from '../../queries/entries.js';
import { CAUTIONS } from '../../trade/caution-table.js';
import { netNg } from '../../weighing/reading.js';
import { jobThings } from '../form/form.js';
import { first } from '../form/posted.js';
import { readFields } from '../form/write.js';
import { policyFor } from '../session/context.js';

const SHOWN = {
  GB: ['anywhere', 'UK', 'EU/UK', 'UK/EU'],
  US: ['anywhere', 'US', 'US, varies'],
};
/** The text of a caution with its source, or null where it does not concern this country; elsewhere only what holds anywhere. */
export function cautionWords(id, country) {
  const caution = Object.hasOwn(CAUTIONS, id) ? CAUTIONS[id] : undefined;
  if (!caution) throw new Error(`no caution ${id}`);
  return (SHOWN[country] ?? ['anywhere']).includes(caution.jurisdiction) ? `${caution.text} (${caution.source})` : null;
}
const ALL_WORK = ['clean', 'solder', 'plate', 'laser', 'set'];
const agreedWork = (job) => (job.says.work ?? '').split(' ').filter((one) => one !== '');
/** What each entry is about to do to a stone in its seat; joining follows how the work was agreed. */
const STEPS = {
  work_agreed: (_job, typed) => careStepsOf(typed.get('steps')?.filter((step) => step !== '') ?? ALL_WORK),
  inspected_before_work: (job) => careStepsOf(agreedWork(job)),
  piece_cleaned: () => ['ultrasonic', 'steam', 'pickle'],
  piece_sized: (job) => careStepsOf(['size-up', ...agreedWork(job)]),
  metal_added: (job) => careStepsOf(['size-up', ...agreedWork(job)]),
  stone_set: () => ['hammerSetting'],
};
/** Cautions that are shown only when the ledger calls for them. */
const CALLED_FOR = ['hallmark-addition', 'hallmark-deface'];
/** The cautions of a form, its entry's own before those of this job. */
export async function formCautions(web, c, of, typed = new Map()) {
  const { country } = policyFor(c);
  const own = (of.form.cautions ?? []).filter((id) => !CALLED_FOR.includes(id)).flatMap((id) => cautionWords(id, country) ?? []);
  if (!of.job || of.entry === undefined) return own;
  const things = await jobThings(web, of.job.id);
  const steps = STEPS[of.entry]?.(of.job, typed) ?? [];
  const marked = things.some((thing) => thing.kind === 'piece' && !thing.gone && isMarked(thing));
  const defaced = of.entry === 'metal_cut' && marked ? cautionWords('hallmark-deface', country) : null;
  const shows = of.form.cautions?.includes('hallmark-addition') || of.entry === 'metal_cut';
  const added = marked && shows ? await jobCautions(web, c, of.job, things, plannedIn(of, typed, c)) : [];
  return [...stoneCautions(things, steps), ...added, ...(defaced ? [defaced] : []), ...own];
}
/** What the ledger's own weights call for on a job, in the countries whose law it is. */
export async function jobCautions(web, c, job, things, planned) {
  const law = cautionWords('hallmark-addition', policyFor(c).country);
  const pieces = things.filter((thing) => thing.kind === 'piece' && !thing.gone && isMarked(thing));
  if (law === null || pieces.length === 0) return [];
  const facts = told(await entriesOf(web.store, job.id)).flatMap((entry) => entry.facts);
  return pieces.flatMap((piece) => additionCaution(piece, agreedWork(job), facts, planned) ?? []).map((words) => `${words} ${law}`);
}
/** Metal that was typed and is not written yet. */
function plannedIn(of, typed, c) {
  if (of.entry !== 'metal_added' || first(typed, 'weight.text') === '') return undefined;
  const reading = readFields(of.fields, typed, c).data.weight;
  const ng = reading ? netNg(reading) : null;
  return ng === null ? undefined : { metal: first(typed, 'metal'), ng };
}
