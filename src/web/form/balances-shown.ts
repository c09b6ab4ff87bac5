// The balances that a weight may have been read on, as its field offers them.
import { decimalsOfStep, formatMass, massNg } from '../../units/mass.ts';
import type { Policy } from '../session/context.ts';

/** Each balance in service by its name, its unit and the step of its finest range. */
export const balancesShown = ({ balances, balanceNames }: Policy) =>
  [...balances].map(([id, { unit, ranges }]) => {
    const stepNg = ranges[0]?.stepNg ?? massNg(0);
    return { id, name: balanceNames.get(id) ?? '', unit, step: formatMass(stepNg, unit, decimalsOfStep(stepNg, unit)) };
  });
