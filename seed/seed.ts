// npm run seed: writes the invented shop into an empty data directory, the one that LEMEL_DATA names.
import { beginOrStop } from './begin.ts';

await beginOrStop(process.env.LEMEL_DATA ?? 'data');
