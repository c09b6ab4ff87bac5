// Each stone and parcel of a job: counted out and in, and its first weight against its last where it was weighed twice.
import { compareWeights } from '../reckoning/stone-agreement.js';
/** The checks of every stone and parcel that was out of its piece; `setWhole` counts the stones of each thing that went in whole. */
export function stoneChecks({ streams, pieces, now }) {
  const things = new Set(
    streams.flatMap(({ into, stones }) => (stones !== undefined && into !== undefined && !pieces.has(into) ? [into] : [])),
  );
  return [...things].map((thing) => {
    const came = streams.filter(({ into, part }) => into === thing && part !== 'weighing');
    const went = streams.filter(({ outOf, part }) => outOf === thing && part === 'stones');
    const weighings = streams.filter(({ into, part }) => into === thing && part === 'weighing');
    const out = came.reduce((sum, { stones = 0 }) => sum + stones, 0);
    const taken = went.reduce((sum, { stones = 0 }) => sum + stones, 0);
    const isHere = now.has(thing) || streams.some(({ outOf, part }) => outOf === thing && part === 'left whole');
    const [first, ...later] = [...came, ...weighings].filter((step) => step.ng !== null);
    const after = later.at(-1);
    const compared = first && after && came.length === 1 ? compareWeights(asMeasured(first), asMeasured(after)) : null;
    return { thing, out, setAgain: isHere ? taken : out, before: weightOf(first), after: weightOf(after), compared };
  });
}
const weightOf = (step) => (step ? { seq: step.seq, ng: step.ng, stepNg: step.reading?.stepNg ?? null } : null);
function asMeasured({ ng, uRandomG, factors }) {
  const worth = { uRandomG, factors };
  return { g: ng / 1e9, worth };
}
