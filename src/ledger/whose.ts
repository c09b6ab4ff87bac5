// Whose is this? A piece or stone without a label, held against what is here by its weight: what it could be, what it cannot be, and what nobody knows. Never what it is.
import { type Candidate, couldBe, shareAlsoAgreeing } from '../reckoning/stone-agreement.ts';
import { sizeSpreadCt } from '../trade/stone-spread.ts';
import { type MassNg, massNg } from '../units/mass.ts';
import { netNg, type Reading } from '../weighing/reading.ts';
import { uOfSum, type Worth } from '../weighing/uncertainty.ts';
import { worthOf } from '../weighing/worth.ts';
import { lastReading, type Plates, usualOff } from './expected.ts';
import { sumOf, type Thing } from './thing.ts';

export interface Found {
  readonly what: 'piece' | 'stone';
  readonly reading: Reading;
  /** The longest way across a stone, in millimetres; null where it was not measured. */
  readonly sizeMm: number | null;
}
/** A thing that is here, with what it should weigh now; null where that is not known. */
export interface Held {
  readonly thing: Thing;
  readonly ng: MassNg | null;
  readonly reading: Reading | undefined;
}
export interface Whose {
  /** By weight, nearest first. */
  readonly could: readonly Held[];
  readonly cannot: readonly Held[];
  /** Measures more than half a millimetre otherwise than was noted. */
  readonly otherSize: readonly Held[];
  /** Never weighed by itself: it could be any of these. */
  readonly unknown: readonly Held[];
  /** One agrees, every other that is here was weighed and does not come near. */
  readonly isOnly: boolean;
  /** The share of other stones of that size that would weigh as much; null of a piece. */
  readonly alsoShare: number | null;
}
/** Two measurements of one stone, one perhaps in its seat, differ by no more (common practice, no source). */
const SIZE_MM = 0.5;

/** Holds what was found against the things of the jobs in the house; `jobs` by their ids, of which the dust of the work agreed is asked. */
export function whoseIs(found: Found, things: readonly Thing[], jobs: ReadonlyMap<string, Thing>, plates: Plates): Whose {
  const weight = { g: (netNg(found.reading) ?? 0) / 1e9, worth: worthIn(found.reading, plates) };
  const here = things.filter((thing) => isHere(thing, found.what)).map(heldOf);
  const otherSize = here.filter(({ thing }) => isOtherSize(thing, found.sizeMm));
  const rest = here.filter((one) => !otherSize.includes(one));
  const known = rest.filter(({ ng }) => ng !== null);
  const { candidates, only } = couldBe(
    weight,
    known.map(({ thing, ng }) => {
      const off = mostOff(thing, jobs.get(thing.stream)) / 1e9;
      const g = (ng ?? 0) / 1e9;
      return { id: thing.id, g: Math.max(g - off, Math.min(g, weight.g)), worth: worthOfSum(thing, plates) };
    }),
  );
  const unknown = rest.filter(({ ng }) => ng === null);
  const could = candidates.flatMap(({ id }: Candidate) => known.filter(({ thing }) => thing.id === id));
  return {
    ...{ could, cannot: known.filter((one) => !could.includes(one)), otherSize, unknown },
    isOnly: only !== null && unknown.length === 0,
    alsoShare: found.what === 'stone' ? shareAlsoAgreeing(Math.SQRT2 * weight.worth.uRandomG, sizeSpreadCt(5 * weight.g) / 5) : null,
  };
}

/** A piece that has not gone home; a stone that is out, or what a packet holds. */
const isHere = ({ kind, gone, stones = 0 }: Thing, what: Found['what']): boolean =>
  !gone && (what === 'piece' ? kind === 'piece' : (kind === 'stone' || kind === 'packet') && stones > 0);

/** Of stones that lie together no one's weight is known. */
function heldOf(thing: Thing): Held {
  const sum = sumOf(thing.expected);
  const reading = lastReading(thing);
  const isOne = thing.kind === 'piece' || thing.stones === 1;
  return { thing, reading, ng: isOne && reading && 'ng' in sum && sum.ng > 0 ? sum.ng : null };
}

/** What may have gone off it since it was weighed: a find that is lighter by no more could still be it. */
const mostOff = (thing: Thing, job: Thing | undefined): number =>
  Math.max(...['', 'cleaned and dry'].map((state) => usualOff(thing, job, state).ng));

function isOtherSize({ says }: Thing, sizeMm: number | null): boolean {
  const noted = Number(says.sizeMm ?? Number.NaN);
  return sizeMm !== null && Math.abs(noted - sizeMm) > SIZE_MM;
}

const worthIn = (reading: Reading, plates: Plates): Worth => worthOf(reading, plates.get(reading.balance ?? ''), { epoch: 'now' });

/** A single reading keeps what it shares with the weighing of the find; a sum of several is one doubt. */
function worthOfSum({ rests }: Thing, plates: Plates): Worth {
  const terms = Object.values(rests).map(({ sign, reading }) => ({ sign, worth: worthIn(reading, plates) }));
  const [only, ...others] = terms;
  return only && others.length === 0 ? only.worth : { uRandomG: uOfSum(terms), factors: [] };
}

/** The step a weight is shown to. */
export const stepOf = ({ reading, thing }: Held): MassNg => massNg(reading?.stepNg ?? (thing.stepNg || 10_000_000));
