// Bench skins closed over the jobs above them: what the jobs are short of by reckoning, against what lay in the skin when it was weighed.
import { closeSkin } from '../reckoning/skins.js';
import { massNg } from '../units/mass.js';
import { netNg } from '../weighing/reading.js';

/** Of a job's usual loss this much is dust in the air, on the mop and down the drain, and never reaches the skin (common practice, no source). */
const LOST_FOR_GOOD = 0.2;
/** The periods of one skin from its own entries and the jobs worked above it. A job that was not weighed in and out is not among them: what it gave shows as a gain. */
export function skinPeriods(skin, entries, jobs, worths) {
  const gathered = [];
  const emptied = [];
  for (const { seq, atMs, facts } of entries) {
    for (const one of facts) {
      const reading =
        one.fact === 'reading' && one.of === skin ? one.reading : one.fact === 'flow' && one.from === skin ? one.reading : undefined;
      const weighed = reading && weighedAs(reading, atMs, worths);
      if (weighed) (one.fact === 'reading' ? gathered : emptied).push({ seq, atMs, weighed });
    }
  }
  return gathered.slice(1).map((to, index) => {
    const from = gathered[index] ?? to;
    const isWithin = ({ atMs }) => atMs > from.atMs && atMs <= to.atMs;
    const own = jobs.filter(isWithin);
    const removed = emptied.filter((one) => one.seq > from.seq && one.seq < to.seq).map(({ weighed }) => weighed);
    const given = own.map(({ job, closing, usual: { meanG, tauG } }) => ({
      ...{ job, weighings: closing },
      usual: { meanG: LOST_FOR_GOOD * meanG, tauG: LOST_FOR_GOOD * tauG },
    }));
    return { from, to, jobs: own.map(({ job }) => job), closed: closeSkin(given, { opening: from.weighed, closing: to.weighed, removed }) };
  });
}
function weighedAs(reading, atMs, worths) {
  const ng = netNg(reading);
  return ng === null ? null : { ng, worth: worths(reading, atMs), stepNg: reading.stepNg ?? massNg(0) };
}
