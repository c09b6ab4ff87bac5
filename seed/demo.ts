// npm run demo: the program in an invented shop, in a data directory of its own.
import { beginOrStop } from './begin.ts';

process.env.LEMEL_DATA ??= 'data-demo';
await beginOrStop(process.env.LEMEL_DATA);
await import('../src/server.ts');
