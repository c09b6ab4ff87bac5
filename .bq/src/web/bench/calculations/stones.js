// Stones and units: what a stone should weigh from its measurements, and a weight in every unit that papers of the trade name.
import { optional, stated } from '../../../book/entry.js';
import { choice, decimal, text } from '../../../book/values.js';
import { GEMS } from '../../../trade/gems.js';
import { GIRDLE_FACTORS, STONE_FORMULAS } from '../../../trade/stone-formulas.js';
import { BAND_PERCENT, colouredMass, diamondMass, girdleFactor } from '../../../trade/stone-mass.js';
import { convertMass, NAMED_UNITS, readUnit } from '../../../units/mass-units.js';
import { calculation, estimateWords } from './calculation.js';
import { mm } from './shared.js';

const wordsFor = (table, words) => Object.fromEntries(Object.keys(table).map((key) => [key, words(key)]));
const formulaWords = (id) => `${STONE_FORMULAS[id].kind}, ${STONE_FORMULAS[id].words}${id.endsWith('-2') ? ', by another source' : ''}`;
const ACCESS = wordsFor(BAND_PERCENT, (access) => `${access}, ± ${BAND_PERCENT[access]} %`);
export const stone = calculation({
  title: 'Stone weight',
  asks: 'What should a stone of these measurements weigh?',
  fields: {
    formula: stated(choice(wordsFor(STONE_FORMULAS, formulaWords))),
    gem: optional(stated(choice(wordsFor(GEMS, (gem) => `${gem} · ${GEMS[gem].nominal}`)))),
    length: stated(mm),
    width: stated(mm),
    depth: stated(mm),
    girdle: optional(stated(choice(wordsFor(GIRDLE_FACTORS, (girdle) => girdle)))),
    access: stated(choice(ACCESS)),
  },
  labels: {
    formula: 'Cut',
    gem: 'Which gem, for a coloured stone',
    length: 'Length, or largest diameter',
    width: 'Width, or smallest diameter',
    depth: 'Depth',
    girdle: 'Girdle of a diamond',
    access: 'Measured in the open or in its setting',
  },
  start: { formula: 'diamond-round-1', access: 'obstructed' },
  run(said) {
    const { kind, sources } = STONE_FORMULAS[said.formula];
    const size = { lengthMm: Number(said.length), widthMm: Number(said.width), depthMm: Number(said.depth) };
    if (kind === 'coloured' && said.gem === undefined)
      return { field: 'gem', say: 'Say which gem: its specific gravity is part of the weight.' };
    if (kind === 'diamond' && said.gem !== undefined && said.gem !== 'diamond')
      return { field: 'gem', say: 'That cut’s formula is for diamond. Choose one for coloured stones.' };
    const girdle = said.girdle === undefined ? 1 : girdleFactor(said.girdle, size.widthMm);
    const estimate =
      kind === 'diamond'
        ? diamondMass(said.formula, size, said.access, girdle)
        : colouredMass(said.formula, size, GEMS[said.gem].nominal, said.access);
    return {
      rows: [
        ['It should weigh', estimateWords(estimate, 'ct')],
        ['In grams', estimateWords(estimate)],
      ],
      estimate,
      unit: 'ct',
      formula: estimate.formula,
      sources: [...sources, 'MGC', ...(said.girdle === undefined ? [] : ['GGG'])],
      note: 'An estimate asks a question. It never shows that two stones are one.',
    };
  },
});
const USUAL = ['gram', 'carat', 'grain', 'pennyweight', 'troyOunce', 'momme'];
export const units = calculation({
  title: 'Units',
  asks: 'What is this weight in other units?',
  fields: {
    amount: stated(decimal('units')),
    unit: optional(stated(text(30))),
    which: optional(stated(choice(wordsFor(NAMED_UNITS, (name) => NAMED_UNITS[name].words)))),
  },
  labels: { amount: 'How many', unit: 'Unit, as it is written', which: 'Or choose it' },
  hints: { unit: 'g, ct, grain, dwt, ozt, momme …; a word that means two things is asked about.' },
  run(said) {
    const read = said.which ? { unit: said.which } : readUnit(said.unit ?? '');
    if ('say' in read) return { field: read.choices.length > 0 ? 'which' : 'unit', say: read.say };
    const from = read.unit;
    return {
      rows: [
        [`${said.amount} × ${NAMED_UNITS[from].words}`, 'is'],
        ...USUAL.map((to) => [NAMED_UNITS[to].words, convertMass(said.amount, from, to, 4)]),
      ],
      formula: 'units-1',
      sources: ['HB44', 'GNU'],
    };
  },
});
