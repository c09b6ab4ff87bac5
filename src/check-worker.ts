// The check of a data directory in a thread of its own, so that whoever is served meanwhile does not wait for it.
import { parentPort, workerData } from 'node:worker_threads';
import { checkData } from './store/check.ts';

const { dir, sqlDir } = workerData as { readonly dir: string; readonly sqlDir: string };
parentPort?.postMessage({ found: await checkData(dir, sqlDir, (done) => parentPort?.postMessage({ done })) });
