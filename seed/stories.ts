// Everything that happened in the demo shop.
import { eternityRing, hallmarkedRing, ownGold } from './at-the-bench.ts';
import { SMALL_JOBS, skinScenes } from './bench-weeks.ts';
import { heirloom } from './heirloom.ts';
import { oddWeight, stoneCount } from './open-questions.ts';
import { atTheSetter, lateBrooch } from './out-of-the-shop.ts';
import { theShop } from './shop.ts';
import { chain, clasp, sizing } from './short-tickets.ts';
import type { Story } from './story.ts';
import { waitAndTake } from './wait-and-take.ts';

export const STORIES: readonly Story[] = [
  { ...theShop, scenes: [...theShop.scenes, ...skinScenes] },
  ...SMALL_JOBS.map((job) => job.story),
  ...[sizing, chain, clasp, heirloom, stoneCount, oddWeight, atTheSetter],
  ...[eternityRing, ownGold, hallmarkedRing, waitAndTake, lateBrooch],
];
