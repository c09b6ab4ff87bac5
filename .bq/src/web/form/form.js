// What a form shows before anything is typed: its own key, what begins with it, the things it may name, the streams as they stand.
import { ulid } from 'ulid';
import { expectedOf, lastReading } from '../../ledger/expected.js';
import { thingsInHouse } from '../../queries/jobs.js';
import { streamSizes } from '../../queries/sizes.js';
import { LISTED_MAX, newestOf, thingAt, thingsOfStream } from '../../queries/things.js';
import { bagCode, refFromBytes } from '../../units/ids.js';
import { decimalsOfStep, formatMass, massNg } from '../../units/mass.js';
import { wordsFor } from '../job/words.js';
import { policyFor } from '../session/context.js';
export const newRef = (web, kind) => refFromBytes(kind, web.random(16));
/** A bag code that no job has had. */
export async function newBag(web) {
  for (let length = 3; ; length = Math.min(5, length + 1)) {
    for (let tried = 0; tried < 20; tried++) {
      const code = bagCode(web.random(length), length);
      if ((await thingAt(web.store, code)) === null) return code;
    }
  }
}
const FRESH = new Map();
/** A form for these fields; `typed` is what was posted before, which keeps its key and what it begins. `job` narrows what may be named. */
export async function showForm(web, c, fields, { job, typed = FRESH, problems = [], asked, named = {} } = {}) {
  const policy = policyFor(c);
  const kept = (name, make) => typed.get(name)?.[0] || make();
  // Not "form": an input of that name hides the form itself from scripts that ask the form's elements for it.
  const hidden = [['formKey', kept('formKey', () => ulid(web.clock()).toLowerCase())]];
  const things = {};
  const filled = new Map(typed);
  const streams = new Set([policy.shop, ...(job ? [job.id] : [])]);
  for (const [name, { role, kinds, control, mayBeMissing }] of Object.entries(fields)) {
    const kind = kinds[0];
    if (control.kind === 'list') fillFresh(web, filled, name, control);
    if (role === 'tells' || control.kind !== 'ref' || !kind || kind === 'entry') continue;
    if (kind === 'shop') hidden.push([name, policy.shop]);
    else if (kind === 'job' && job && kinds.length === 1) hidden.push([name, job.id]);
    else if (role === 'begins' && !mayBeMissing)
      hidden.push([name, typed.get(name)?.[0] || (kind === 'bag' ? await newBag(web) : newRef(web, kind))]);
    else {
      const choices = named[name] ?? (role === 'begins' ? [] : await mayBeNamed(web, kinds, job));
      for (const thing of choices) streams.add(thing.stream);
      const fresh = role !== 'names' && kind !== 'bag' ? [[kept(`new.${name}`, () => newRef(web, kind)), 'a new one']] : [];
      if (fresh[0]) hidden.push([`new.${name}`, fresh[0][0]]);
      things[name] = [...choices.map((thing) => [thing.id, wordsFor(web, thing)]), ...fresh];
      if (things[name]?.length === 1 && !fields[name]?.mayBeMissing && !filled.has(name)) filled.set(name, [things[name]?.[0]?.[0] ?? '']);
    }
  }
  hidden.push(...(await seenStreams(web, [...streams], typed)));
  const form = {
    typed: filled,
    problems,
    things,
    balances: [...policy.balances].map(([id, { unit, ranges }]) => ({
      id,
      name: policy.balanceNames.get(id) ?? '',
      unit,
      step: stepWords(ranges[0]?.stepNg ?? 0, unit),
    })),
    tares: [...policy.tares.keys()],
    ...(asked === undefined ? {} : { asked }),
  };
  return { form, hidden };
}
/** Names for the things that the rows of a list may begin. */
function fillFresh(web, filled, name, { of, max }) {
  if (of.kind !== 'group') return;
  for (const [member, { control }] of Object.entries(of.members)) {
    if (control.kind !== 'fresh') continue;
    for (let row = 0; row < max; row++) {
      const at = `${name}.${row}.${member}`;
      if (!filled.get(at)?.[0]) filled.set(at, [newRef(web, control.of)]);
    }
  }
}
function stepWords(stepNg, unit) {
  const step = massNg(stepNg);
  return formatMass(step, unit, decimalsOfStep(step, unit));
}
/** Things of these kinds that are still here: of the job, or of the jobs in the house; of any other kind the newest; lots while they are open. */
async function mayBeNamed(web, kinds, job) {
  const found = [];
  for (const kind of kinds) {
    const ofJob = ['piece', 'stone', 'packet', 'job'].includes(kind);
    const all = !ofJob
      ? (await newestOf(web.store, kind)).things.toReversed()
      : job
        ? (await jobThings(web, job.id)).filter((thing) => thing.kind === kind)
        : (await thingsInHouse(web.store, kind)).slice(-LISTED_MAX);
    found.push(...all.filter((thing) => !thing.gone && thing.status !== 'sealed' && (thing.kind === 'job' || thing.status !== 'closed')));
  }
  return found;
}
/** The things of a job, the job itself among them. */
export const jobThings = ({ store }, job) => thingsOfStream(store, job);
/** The count of each stream as the person sees it now; a form shown again keeps the counts it was first shown with. */
async function seenStreams(web, streams, typed) {
  const sizes = await streamSizes(web.store, streams);
  return streams.map((stream) => [`seen.${stream}`, typed.get(`seen.${stream}`)?.[0] ?? String(sizes.get(stream) ?? 0)]);
}
/** "7.11 ± 0.02 g" where the ledger knows what to expect of a thing, in the unit it was last weighed in. */
export function expectedWords(thing, balances) {
  const expected = expectedOf(thing, balances);
  if (!expected) return null;
  const unit = lastReading(thing)?.unit ?? 'g';
  const decimals = decimalsOfStep(expected.stepNg, unit);
  return `${formatMass(expected.ng, unit, decimals)} ± ${formatMass(expected.marginNg, unit, decimals)}\u00a0${unit}`;
}
