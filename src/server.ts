// The composition root: environment, clock, randomness and files come together here, and the program listens.

import { createServer } from 'node:https';
import { join } from 'node:path';
import { serve } from '@hono/node-server';
import { createApp } from './app.ts';
import { readConfig } from './config.ts';
import { sentenceOf } from './faults.ts';
import { clock, openData, ROOT, random } from './machine.ts';
import { thingsOfKind } from './queries/things.ts';
import { openAccess } from './store/access.ts';
import { certificateFor, fingerprintOf } from './store/certificate.ts';
import { openDirectory } from './store/names.ts';
import type { Ref } from './units/ids.ts';
import { PATIENCE } from './web/session/patience.ts';
import { notices } from './web/session/standing.ts';

/** One JSON object a line; never parameters, bodies or names. */
const log = (said: object) => process.stdout.write(`${JSON.stringify({ at: new Date().toISOString(), ...said })}\n`);

function stop(sentence: string): never {
  process.stderr.write(`${sentence}\n`);
  process.exit(1);
}

const config = (() => {
  try {
    return readConfig(process.env);
  } catch (error) {
    return stop((error as Error).message);
  }
})();
if (process.argv.includes('--check-config')) {
  log({ config });
  process.exit(0);
}

const store = await openData(config.dataDir).catch((error: unknown) => stop(sentenceOf(error)));
const access = openAccess(store.access, store.pepper, clock, random);
const directory = await openDirectory(store);
const web = {
  store,
  access,
  directory,
  clock,
  random,
  baseUrl: config.baseUrl,
  assetsDir: join(ROOT, 'views', 'assets'),
  photosDir: join(store.dir, 'photos'),
  note: log,
};
const app = createApp(web, (error, path) => log({ bug: error instanceof Error ? (error.stack ?? error.message) : String(error), path }));

const certificate = config.mode === 'lan' ? await certificateFor(join(store.dir, 'keys'), config.address, clock()) : null;
const where = { fetch: app.fetch, hostname: config.address, port: config.port, serverOptions: { ...PATIENCE, ...certificate } };
const server = serve(certificate ? { ...where, createServer } : where, async () => {
  log({ serving: config.baseUrl, readOnly: store.readOnly, ...(certificate ? { certificate: fingerprintOf(certificate) } : {}) });
  for (const sentence of await notices(web)) process.stdout.write(`${sentence}\n`);
  process.stdout.write(await wayIn());
});
server.on('error', (error) => stop(sentenceOf(error)));

/** What to open first: the one-time link of the first run, that of the first screen on the shop's network, or the program itself. */
async function wayIn(): Promise<string> {
  const owner = (await thingsOfKind(store, 'person')).find(({ role }) => role === 'owner');
  if (!owner) return `Start the ledger here, once, within half an hour:\n${config.baseUrl}/first-run?key=${await access.makeSetupLink()}\n`;
  if (!certificate || (await access.devices()).length > 0) return `Lemel is at ${config.baseUrl}\n`;
  const by = owner.id as Ref<'person'>;
  const link = await access.makeEnrolLink({ name: 'First screen', kind: 'counter', by });
  return `Enrol the first screen here, once, within half an hour:\n${config.baseUrl}/enrol?key=${link}\n`;
}

const DEADLINE_MS = 8000;
/** Told to stop by any signal, however often, it stops once. */
const stopping = new AbortController();
stopping.signal.addEventListener('abort', () => {
  const deadline = setTimeout(() => process.exit(1), DEADLINE_MS);
  server.close(async () => {
    await store.close();
    clearTimeout(deadline);
    process.exit(0);
  });
  if ('closeIdleConnections' in server) server.closeIdleConnections();
});
for (const signal of ['SIGINT', 'SIGTERM']) process.on(signal, () => stopping.abort());
