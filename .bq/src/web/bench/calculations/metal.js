// Metal: wire, strip and sheet, gauges, raising and lowering a karat, the same piece in another metal, what a coat weighs.
import { optional, stated } from '../../../book/entry.js';
import { choice, count, decimal, text } from '../../../book/values.js';
import { ALLOYS, alloyToLowerNg, fineToRaiseNg, massInOtherMetal } from '../../../trade/alloys.js';
import { coatMass, flatBandAreaMm2 } from '../../../trade/plating.js';
import { stockMass } from '../../../trade/stock-shapes.js';
import { massNg } from '../../../units/mass.js';
import { massOf } from '../../../units/mass-units.js';
import { diameterMm } from '../../../units/ring-size.js';
import { calculation, estimateWords, grams, millimetres } from './calculation.js';
import { GAUGE_HINT, gaugeOf, insideOf, isProblem, metal, mm, size, stockFields, stockLabels, stockOf, system } from './shared.js';
export const stock = calculation({
  title: 'Wire, strip and sheet',
  asks: 'What does a length of this stock weigh?',
  fields: { ...stockFields, length: stated(mm) },
  labels: { ...stockLabels, length: 'Length' },
  hints: { gauge: GAUGE_HINT, width: 'Sheet is a wide strip.' },
  start: { metal: '18K yellow', section: 'round' },
  run(said) {
    const of = stockOf(said);
    if (isProblem(of)) return of;
    const estimate = stockMass(of, Number(said.length), ALLOYS[said.metal].density);
    return {
      rows: [
        ['It weighs', estimateWords(estimate)],
        ['Thickness', millimetres(of.thicknessMm)],
      ],
      estimate,
      formula: estimate.formula,
      sources: ['STG', 'TMT'],
    };
  },
});
export const gauges = calculation({
  title: 'Gauges',
  asks: 'How thick is this gauge?',
  fields: { gauge: stated(text(20)) },
  labels: { gauge: 'Gauge' },
  hints: { gauge: GAUGE_HINT },
  run(said) {
    const thick = gaugeOf(said.gauge);
    if (isProblem(thick)) return thick;
    return { rows: [['Thickness', `${thick.toFixed(3)}\u00a0mm`]], formula: 'gauge-1', sources: ['GNU'] };
  },
});
export const karat = calculation({
  title: 'Raise or lower a karat',
  asks: 'How much fine gold or alloy is melted with it?',
  fields: { mass: stated(decimal('g')), from: stated(count(24, 1)), to: stated(count(24, 1)) },
  labels: { mass: 'Gold there is', from: 'Its karat', to: 'Karat wanted' },
  run(said) {
    if (said.to === 24 && said.from < 24) return { field: 'to', say: 'No addition makes fine gold of an alloy: that is refining.' };
    const there = massOf(said.mass, 'gram');
    const raises = said.to > said.from;
    const addedNg = raises ? fineToRaiseNg(there, said.from, said.to) : alloyToLowerNg(there, said.from, said.to);
    return {
      rows: [
        [raises ? 'Add fine gold' : 'Add alloy', grams(addedNg)],
        ['Then there is', grams(massNg(there + addedNg))],
      ],
      formula: raises ? 'karat-raise-1' : 'karat-lower-1',
      sources: ['ORK'],
      note: 'Whole karats as they are called; a melt made to a standard is weighed and assayed.',
    };
  },
});
export const metalSwap = calculation({
  title: 'The same in another metal',
  asks: 'What would the same volume weigh in another metal?',
  fields: { mass: stated(decimal('g')), from: metal, to: metal },
  labels: { mass: 'It weighs', from: 'In', to: 'In the new metal' },
  start: { from: '14K yellow', to: '18K yellow' },
  run(said) {
    const estimate = massInOtherMetal(massOf(said.mass, 'gram'), ALLOYS[said.from].density, ALLOYS[said.to].density);
    return { rows: [['It would weigh', estimateWords(estimate)]], estimate, formula: estimate.formula, sources: ['STG', 'TMT'] };
  },
});
const COATS = { rhodium: 'rhodium', gold: 'gold', silver: 'silver' };
export const plating = calculation({
  title: 'Plating',
  asks: 'What does a coat weigh?',
  fields: {
    coat: stated(choice(COATS)),
    thick: stated(decimal('µm')),
    area: optional(stated(decimal('cm²'))),
    system: optional(system),
    size: optional(size),
    width: optional(stated(mm)),
    thickness: optional(stated(mm)),
  },
  labels: {
    coat: 'Coat',
    thick: 'Thickness of the coat',
    area: 'Area plated',
    system: 'Or a flat band: size by',
    size: 'Size of the band',
    width: 'Width of the band',
    thickness: 'Thickness of the band',
  },
  start: { coat: 'rhodium', thick: '0.5' },
  run(said) {
    const area = areaOf(said);
    if (isProblem(area)) return area;
    const estimate = coatMass(said.coat, area, Number(said.thick));
    const milligrams = (ng) => `${(ng / 1e6).toFixed(1)}\u00a0mg`;
    return {
      rows: [
        ['The coat weighs', `${milligrams(estimate.massNg)} ± ${milligrams(estimate.plusMinusNg)}`],
        ['On an area of', `${(area / 100).toFixed(1)}\u00a0cm²`],
      ],
      estimate,
      formula: estimate.formula,
      sources: ['GNU', 'DER'],
    };
  },
});
function areaOf(said) {
  if (said.area !== undefined) return Number(said.area) * 100;
  const { system: by, size: label, width, thickness } = said;
  if (!by || !label || !width || !thickness)
    return { field: 'area', say: 'Give the area, or the size, width and thickness of a flat band.' };
  const inside = insideOf(by, label, 'size');
  return isProblem(inside) ? inside : flatBandAreaMm2(diameterMm(inside), Number(width), Number(thickness));
}
