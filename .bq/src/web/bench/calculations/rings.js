// Rings: the shank, the change of size, and one size in all five systems.
import { optional, stated } from '../../../book/entry.js';
import { choice } from '../../../book/values.js';
import { ALLOYS } from '../../../trade/alloys.js';
import { blankLengthMm, sizingLengths, sizingMass } from '../../../trade/sizing.js';
import { bandMass, stockMass } from '../../../trade/stock-shapes.js';
import { massNg } from '../../../units/mass.js';
import { diameterMm, labelOf, RING_SYSTEMS, usByDefinitionMm } from '../../../units/ring-size.js';
import { calculation, estimateWords, grams, millimetres } from './calculation.js';
import { GAUGE_HINT, insideOf, isProblem, mm, SIZE_HINT, size, stockFields, stockLabels, stockOf, system } from './shared.js';

const halfOf = (whole) => ({
  ...whole,
  massNg: massNg(Math.round(whole.massNg / 2)),
  plusMinusNg: massNg(Math.round(whole.plusMinusNg / 2)),
});
export const shank = calculation({
  title: 'Shank',
  asks: 'What will a shank of this section and size weigh, and how long is its blank?',
  fields: { ...stockFields, system, size, share: stated(choice({ whole: 'whole', half: 'half-shank' })), allowance: optional(stated(mm)) },
  labels: { ...stockLabels, system: 'Size by', size: 'Size', share: 'How much of it', allowance: 'Allowance for a wide band' },
  hints: { gauge: GAUGE_HINT, size: SIZE_HINT },
  start: { metal: '18K yellow', section: 'halfRound', system: 'uk', share: 'whole' },
  run(said) {
    const stock = stockOf(said);
    const inside = insideOf(said.system, said.size, 'size');
    if (isProblem(stock)) return stock;
    if (isProblem(inside)) return inside;
    const whole = bandMass(stock, diameterMm(inside), ALLOYS[said.metal].density);
    const estimate = said.share === 'half' ? halfOf(whole) : whole;
    const blank = blankLengthMm(diameterMm(inside), stock.thicknessMm, Number(said.allowance ?? 0)) / (said.share === 'half' ? 2 : 1);
    return {
      rows: [
        ['It weighs', estimateWords(estimate)],
        ['Length of the blank', millimetres(blank)],
        ['Inside diameter', millimetres(diameterMm(inside))],
      ],
      estimate,
      formula: estimate.formula,
      sources: ['CCR', 'STG', 'TMT'],
    };
  },
});
export const sizeChange = calculation({
  title: 'Change of size',
  asks: 'How much is let in or cut out, and what does it weigh?',
  fields: { system, from: size, to: size, ...stockFields, kerf: optional(stated(mm)), filed: optional(stated(mm)) },
  labels: { ...stockLabels, system: 'Size by', from: 'From', to: 'To', kerf: 'Width of one saw cut', filed: 'Filed off the joints in all' },
  hints: { gauge: GAUGE_HINT, from: SIZE_HINT },
  start: { metal: '18K yellow', section: 'halfRound', system: 'uk' },
  run(said) {
    const stock = stockOf(said);
    const [from, to] = [insideOf(said.system, said.from, 'from'), insideOf(said.system, said.to, 'to')];
    for (const read of [stock, from, to]) if (isProblem(read)) return read;
    if (isProblem(stock) || isProblem(from) || isProblem(to)) throw new Error('a problem passed by');
    const { density } = ALLOYS[said.metal];
    const lengths = sizingLengths(from, to, { kerfMm: Number(said.kerf ?? 0), filedMm: Number(said.filed ?? 0) });
    const grows = to > from;
    const piece = stockMass(stock, grows ? lengths.insertMm : lengths.cutOutMm, density);
    const estimate = { ...piece, formula: `sizing-${piece.formula}` };
    const perSize = sizingMass(stock, density, 1);
    return {
      rows: [
        [grows ? 'Let in' : 'Cut out', `${millimetres(grows ? lengths.insertMm : lengths.cutOutMm)}, ${estimateWords(estimate)}`],
        ['Goes as filings', `${millimetres(lengths.lemelMm)}, ${grams(stockMass(stock, lengths.lemelMm, density).massNg)}`],
        ['One US size of this shank', estimateWords(perSize)],
        ['Blank for the whole new size', millimetres(blankLengthMm(diameterMm(to), stock.thicknessMm))],
      ],
      estimate,
      formula: estimate.formula,
      sources: ['GNU', 'STG', 'TMT'],
      note: 'A ring that is stretched or compressed moves no metal.',
    };
  },
});
export const ringSizes = calculation({
  title: 'Ring sizes',
  asks: 'What is this size in the other systems?',
  fields: { system, size },
  labels: { system: 'Size by', size: 'Size' },
  hints: { size: SIZE_HINT },
  start: { system: 'uk' },
  run(said) {
    const inside = insideOf(said.system, said.size, 'size');
    if (isProblem(inside)) return inside;
    const us = RING_SYSTEMS.us.sizeOf(inside);
    const spread = Object.values(usByDefinitionMm(us)).map((circumference) => circumference - inside);
    return {
      rows: [
        ['Inside circumference', millimetres(inside)],
        ['Inside diameter', millimetres(diameterMm(inside))],
        ...Object.keys(RING_SYSTEMS).map((one) => [RING_SYSTEMS[one].words, labelOf(one, inside) ?? 'below its first size']),
      ],
      formula: 'ring-size-1',
      sources: ['GNU'],
      note: `Labels are the nearest there are. US sticks differ: by the definitions in print this size lies from ${Math.min(...spread).toFixed(2)} to +${Math.max(...spread).toFixed(2)} mm of what is said here. Keep the millimetres and the stick they were read on.`,
    };
  },
});
