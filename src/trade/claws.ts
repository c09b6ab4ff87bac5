// Metal in a re-tip or a rebuilt claw, as a cylinder of its wire; each is below what a 0.01 g balance shows for certain.
import { type MassEstimate, timesAlike } from './estimate.ts';
import { roundWire, stockMass } from './stock-shapes.ts';

/** `claws` cylinders of this diameter and height in mm: tips about 8 mg, four full claws 0.12 g. Solder and the shape of the tip make it ± 50 % (trade range 0.05 to 0.3 g, from memory). */
export function clawMass(claws: number, diameterMm: number, heightMm: number, density: number): MassEstimate {
  const one = stockMass(roundWire(diameterMm), heightMm, density);
  return timesAlike({ ...one, plusMinusNg: halfOf(one), formula: 'claw-cylinder-1' }, claws);
}

const halfOf = ({ massNg }: MassEstimate): MassEstimate['plusMinusNg'] => Math.round(massNg / 2) as MassEstimate['plusMinusNg'];
