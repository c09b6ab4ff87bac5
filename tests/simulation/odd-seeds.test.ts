// Whole shops from odd seeds: what people write, what truly happens, and a machine that fails them. `npm run soak` plays more of them.
import { playSeeds } from './seeds.ts';

playSeeds(1);
