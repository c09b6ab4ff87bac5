import { closure } from './closure.js';
/** Closes a skin between two weighings (each with what was swept in or sent out in between): Σ over jobs (in − out) + opening + added − removed − closing. */
export function closeSkin(jobs, skin) {
  const { opening, closing, added = [], removed = [] } = skin;
  const own = [
    ...[opening, ...added].map((weighed, i) => ({ id: `skin in ${i}`, sign: 1, ...weighed })),
    ...[closing, ...removed].map((weighed, i) => ({ id: `skin out ${i}`, sign: -1, ...weighed })),
  ];
  const usual = jobs.flatMap((job) => job.usual ?? []);
  const meanG = usual.reduce((sum, loss) => sum + loss.meanG, 0);
  const tauG = Math.hypot(...usual.map((loss) => loss.tauG));
  const closed = closure([...jobs.flatMap(({ weighings }) => weighings), ...own], usual.length > 0 ? { usual: { meanG, tauG } } : {});
  const gave = jobs.map(({ job, weighings }) => ({ job, ng: weighings.reduce((sum, { sign, ng }) => sum + sign * ng, 0) }));
  return { ...closed, gave };
}
