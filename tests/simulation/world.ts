// What is really in the shop: true masses that nobody there can see, and two balances that err about them as much as the program assumes of a
// balance of which nothing is known: a repeatability and a linearity of one step.
import type { Ref } from '../../src/units/ids.ts';
import { normal, uniform } from '../reckoning/random.ts';

/** Seeded chance: the same seed, the same shop. */
export interface Chance {
  unit(): number;
  normal(): number;
  /** A whole number from 0 to below `n`. */
  below(n: number): number;
  hits(chance: number): boolean;
  pick<T>(of: readonly T[]): T | undefined;
}
export function chanceOf(seed: number): Chance {
  const unit = uniform(seed * 7919 + 1);
  const below = (n: number) => Math.floor(unit() * n);
  return { unit, normal: normal(unit), below, hits: (chance) => unit() < chance, pick: (of) => of[below(of.length)] };
}

/** One job as it truly is; masses in grams. */
export interface TrueJob {
  readonly job: Ref<'job'>;
  readonly piece: Ref<'piece'>;
  stage: 'agreed' | 'finished' | 'home';
  metalG: number;
  /** The stones in the piece, and those out of it in their packet. */
  stonesG: number[];
  packet: { readonly id: Ref<'packet'>; readonly cameOutG: number; stonesG: number[] } | null;
  /** What it truly weighed when a weight of it was first written, and whether that was a slip; null while none was. */
  first: { readonly massG: number; readonly slipped: boolean } | null;
  /** What left the piece (or came into it, below zero) without being written since its first weight and since its last: dust, dirt, theft, another job's stones. */
  lostG: number;
  lostSinceLastG: number;
  /** The first of these as it stood at the last weight after the first; null while there was none. */
  lostAtLastG: number | null;
  /** Metal was stolen of it, or stones, or another job's stones were set. */
  wronged: boolean;
  /** Stones that left without being written. */
  stolenStones: number;
  /** The figures on record include one that no balance showed. */
  slipped: boolean;
  /** Everything since the last weighing was weighed, so that the ledger knows what to expect. */
  known: boolean;
}
export const sumG = (all: readonly number[]): number => all.reduce((sum, one) => sum + one, 0);
/** What the piece truly weighs. */
export const trueG = ({ metalG, stonesG }: TrueJob): number => metalG + sumG(stonesG);

/** Something leaves a piece and is not written. */
export function lose(one: TrueJob, massG: number): void {
  one.lostG += massG;
  one.lostSinceLastG += massG;
}

/** A balance that errs: a gain that drifts from day to day, a bend, noise, and a reading rounded to its step. */
export interface Balance {
  /** What it shows of a true mass, in its unit. */
  shows(massG: number): string;
  /** A day goes by. */
  drift(): void;
}
export function balanceOf(chance: Chance, unit: 'g' | 'ct'): Balance {
  const [stepG, perUnit, decimals] = unit === 'g' ? [0.01, 1, 2] : [0.0002, 0.2, 3];
  let gain = chance.normal() * 1e-4;
  return {
    shows(massG) {
      const bend = (2 * chance.unit() - 1) * stepG;
      const rawG = massG * (1 + gain) + bend + stepG * chance.normal();
      return (Math.max(1, Math.round(rawG / stepG)) * (stepG / perUnit)).toFixed(decimals);
    },
    drift: () => {
      gain = 0.9 * gain + chance.normal() * 4e-5;
    },
  };
}

export interface World {
  readonly chance: Chance;
  readonly bench: Balance;
  readonly carats: Balance;
  readonly jobs: TrueJob[];
}
export function worldOf(seed: number): World {
  const chance = chanceOf(seed);
  return { chance, bench: balanceOf(chance, 'g'), carats: balanceOf(chance, 'ct'), jobs: [] };
}

/** Two neighbouring digits swapped, a decimal place lost: what a tired hand types; the same text where neither gives another weight. */
export function slipOf(text: string, chance: Chance): string {
  const digits = text.replace('.', '');
  const at = chance.below(Math.max(1, digits.length - 1));
  const swapped = digits.slice(0, at) + (digits[at + 1] ?? '') + (digits[at] ?? '') + digits.slice(at + 2);
  const dot = text.indexOf('.');
  const typed = chance.hits(0.7)
    ? `${swapped.slice(0, dot)}.${swapped.slice(dot)}`
    : `${digits.slice(0, dot + 1)}.${digits.slice(dot + 1)}0`;
  return Number(typed) > 0 && Number(typed) < 390 ? typed : text;
}
