// What a record letter says, put together from one job's own entries: a sentence, the beam, the stones, what was removed and added.
import { METAL_WORDS } from '../book/metals.js';
import { SPECIES } from '../book/stone-words.js';
import { stonesWords } from '../book/words.js';
import { WASTE_TOLD } from '../book/work.js';
import { correctionsIn, patchedData } from '../ledger/corrections.js';
import { entryType, readingsIn } from '../ledger/registry.js';
import { countsThatDiffer } from '../projections/job-stones.js';
import { customerJob } from '../reckoning/words.js';
import { massNg } from '../units/mass.js';
import { caratWords, netNg, readingWords } from '../weighing/reading.js';
import { grams, stoneSentence, sum, weightSentence } from './sentences.js';
/** The letter of a job as its entries stand. */
export function letterOf(kept, reckoned, stones) {
  const all = read(kept);
  const of = (...types) => all.filter(({ type }) => types.includes(type));
  const agreed = of('work_agreed').at(-1)?.data;
  const received = of('piece_received').map(({ data }) => data);
  const returned = of('piece_returned', 'returned_with_exception').length > 0;
  return {
    sentence: `${weightSentence(received, reckoned, returned)} ${stoneSentence(stones, reckoned)}`.trim(),
    beam: beamOf(reckoned, { cutNg: sum(of('metal_cut').map(({ ng }) => ng)), addedNg: sum(of('metal_added').map(({ ng }) => ng)) }),
    stones: stones.seats.filter(({ id }) => id !== null).map((seat) => stoneOf(seat)),
    removed: of('metal_cut').map(({ data, weight }) => ({ what: partOf(data), weight, where: whereCutWent(data, agreed) })),
    added: of('metal_added', 'stone_supplied').map(({ type, data, weight }) =>
      type === 'metal_added'
        ? { what: METAL_WORDS[data.metal], weight, where: data.packet ? 'your own gold' : 'from our stock' }
        : { what: SPECIES[data.species], weight, where: 'supplied' },
    ),
    dust: agreed ? WASTE_TOLD[agreed.dust] : null,
    disagreements: disagreementsIn(reckoned, stones),
  };
}
function read(kept) {
  const corrections = correctionsIn(kept);
  return kept.map(({ leaf, hash }) => {
    const data = patchedData(leaf, corrections.get(hash));
    const [first] = readingsIn(entryType(leaf.type, leaf.ver), data);
    return { type: leaf.type, data, weight: first ? readingWords(first.reading) : 'not weighed', ng: (first && netNg(first.reading)) ?? 0 };
  });
}
function beamOf({ state, closed, cameIn, last, expected, removed, added, weights }, of) {
  const like = (ng) => grams({ ng: massNg(ng), ...(cameIn?.stepNg === undefined ? {} : { stepNg: cameIn.stepNg }) });
  const gap = closed && closed.verdict !== 'not checked' ? Math.abs(closed.lossNg) : null;
  const numbers = [
    cameIn && { what: 'came in', weight: grams(cameIn) },
    !last && expected && removed.length + added.length > 0 && { what: 'in it by reckoning', weight: like(expected.ng) },
    last && { what: 'weighed last', weight: grams(last) },
    gap !== null && { what: 'difference not accounted for', weight: like(gap) },
  ].filter((one) => one !== null && one !== false);
  return { state, tilt: weights.tilt, sentence: weighedWords(cameIn, closed, of), numbers };
}
function weighedWords(cameIn, closed, { cutNg, addedNg }) {
  if (!cameIn) return 'It was not weighed, so nothing was checked by weight.';
  if (!closed) return 'It has not been weighed again since: the sum is still open.';
  return customerJob({ receivedNg: cameIn.ng, cutNg: massNg(cutNg), addedNg: massNg(addedNg) }, closed);
}
const stoneOf = ({ says, stones, where, events }) => ({
  seat: says.seat ?? 'not noted',
  what: `${stones > 1 ? `${stones} × ` : ''}${SPECIES[says.species ?? 'unknown']}`,
  weights: events.flatMap(({ reading }) => (reading ? [caratWords(reading)] : [])).join(', then ') || 'not weighed loose',
  where:
    where === 'in the piece'
      ? 'not taken out'
      : where === 'set'
        ? 'taken out and set again'
        : where === 'out'
          ? 'out of the piece now'
          : where,
});
const partOf = ({ part, metal }) => [part, METAL_WORDS[metal]].filter(Boolean).join(', ');
function whereCutWent({ packet }, agreed) {
  if (packet !== undefined) return 'kept in a packet for you';
  return agreed ? WASTE_TOLD[agreed.cutMetal] : 'not agreed';
}
function disagreementsIn({ state, stones }, found) {
  return [
    ...(state === 'off' ? ['The weights of this job do not agree.'] : []),
    ...countsThatDiffer(found).map(({ counted, reckoned }) => `${stonesWords(counted)} counted, ${reckoned} expected.`),
    ...(stones.some(({ compared }) => compared?.verdict === 'does not agree') ? ['A stone does not weigh what it weighed before.'] : []),
  ];
}
