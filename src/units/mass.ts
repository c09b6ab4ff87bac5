// Mass as whole nanograms: every unit of the trade is a whole number of them, and a safe integer holds 9 tonnes.
import { decimalText, divideRounded } from './muldiv.ts';

export type MassNg = number & { readonly __unit: 'ng' };
export type MassUnit = 'g' | 'ct' | 'gr' | 'dwt' | 'ozt' | 'momme';

/** Nanograms in one unit: gram, metric carat, grain, pennyweight, troy ounce, momme (NIST HB 44 App. C; grain = 64.79891 mg exactly). */
export const NG_PER_UNIT: Readonly<Record<MassUnit, number>> = {
  g: 1_000_000_000,
  ct: 200_000_000,
  gr: 64_798_910,
  dwt: 1_555_173_840,
  ozt: 31_103_476_800,
  momme: 3_750_000_000,
};

type MassProblem = 'empty' | 'not a number' | 'too large' | 'too fine';
export type Parsed = { readonly ng: MassNg; readonly decimals: number } | { readonly problem: MassProblem };

/** No weighing in this trade is above a tonne. */
const LIMIT_NG = 1_000_000_000_000_000n;

/** Nanograms of a known whole number; throws when it is not a safe integer. */
export function massNg(ng: number): MassNg {
  if (!Number.isSafeInteger(ng)) throw new RangeError(`mass must be a whole number of nanograms, got ${ng}`);
  return ng as MassNg;
}

/** Reads "5.17", "5,17" or "−0.02" in `unit`, to the nearest nanogram (halves to even; 0.01 dwt is not a whole number of them); 'too fine' where one step of the text is below a nanogram. A point or a comma is the decimal mark, never a thousands mark. */
export function parseMass(text: string, unit: MassUnit): Parsed {
  const clean = text
    .trim()
    .replace(/[\u2212\u2013]/g, '-')
    .replace(',', '.');
  if (clean === '') return { problem: 'empty' };
  const match = /^([+-]?)(\d*)(?:\.(\d*))?$/.exec(clean);
  const whole = match?.[2] ?? '';
  const fraction = match?.[3] ?? '';
  if (!match || (whole === '' && fraction === '')) return { problem: 'not a number' };
  if (whole.length > 15) return { problem: 'too large' };
  if (fraction.length > 12) return { problem: 'too fine' };
  const scale = 10n ** BigInt(fraction.length);
  if (BigInt(NG_PER_UNIT[unit]) < scale) return { problem: 'too fine' };
  const ng = divideRounded(BigInt(whole + fraction) * BigInt(NG_PER_UNIT[unit]), scale, 'half even');
  if (ng > LIMIT_NG) return { problem: 'too large' };
  return { ng: Number(match[1] === '-' ? -ng : ng) as MassNg, decimals: fraction.length };
}

/** "5.17" with exactly `decimals` places, halves away from zero, a true minus sign. */
export function formatMass(ng: MassNg, unit: MassUnit, decimals: number): string {
  const scale = 10n ** BigInt(decimals);
  const unitNg = BigInt(NG_PER_UNIT[unit]);
  const size = BigInt(Math.abs(ng));
  const steps = divideRounded(size * scale, unitNg, 'half up');
  const text = decimalText(steps, decimals);
  return ng < 0 && steps !== 0n ? `\u2212${text}` : text;
}

/** "5.17 g" with a no-break space. */
export function formatMassWithUnit(ng: MassNg, unit: MassUnit, decimals: number): string {
  return `${formatMass(ng, unit, decimals)}\u00a0${unit}`;
}

/** The fewest decimal places at which a step of `stepNg` reads back as itself in `unit`: 0.01 g shows 2, 0.002 ct shows 3; 9 at most. */
export function decimalsOfStep(stepNg: MassNg, unit: MassUnit): number {
  for (let decimals = 0; decimals < 9; decimals++) {
    const parsed = parseMass(formatMass(stepNg, unit, decimals), unit);
    if ('ng' in parsed && parsed.ng === stepNg) return decimals;
  }
  return 9;
}

/** How a unit is written behind a figure. "gr" is the grain of the troy pound, and by many meant as gram: it is read as what it stands for. */
const WRITTEN: Readonly<Record<string, MassUnit>> = {
  ...{ g: 'g', gm: 'g', gram: 'g', grams: 'g', gramme: 'g', grammes: 'g' },
  ...{ ct: 'ct', cts: 'ct', carat: 'ct', carats: 'ct' },
  ...{ gr: 'gr', grain: 'gr', grains: 'gr', dwt: 'dwt', pennyweight: 'dwt', pennyweights: 'dwt' },
  ...{ ozt: 'ozt', 'oz t': 'ozt', momme: 'momme' },
};

/** A figure and the unit that was typed behind it ("1.25 ct"); the text as it is where no unit is. */
export function splitUnit(text: string): { readonly figure: string; readonly unit: MassUnit | null } {
  const [, figure, word] = /^(.*[\d.,])\s*(\p{L}[\p{L} ]*)\.?$/u.exec(text.trim()) ?? [];
  const unit = word === undefined ? undefined : new Map(Object.entries(WRITTEN)).get(word.toLowerCase());
  return figure === undefined || unit === undefined ? { figure: text, unit: null } : { figure: figure.trim(), unit };
}
