// Metal in a re-tip or a rebuilt claw, as a cylinder of its wire; each is below what a 0.01 g balance shows for certain.
import { estimateOf } from './estimate.js';
import { roundWire, stockMass } from './stock-shapes.js';
/** `claws` cylinders of this diameter and height in mm: tips about 8 mg, four full claws 0.12 g. Solder and the shape of the tip make it ± 50 % (trade range 0.05 to 0.3 g, from memory). */
export function clawMass(claws, diameterMm, heightMm, density) {
  return estimateOf((claws * stockMass(roundWire(diameterMm), heightMm, density).massNg) / 1e9, 50, 'claw-cylinder-1');
}
