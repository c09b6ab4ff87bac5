// The composition root: environment, clock, randomness and files come together here, and the program listens.
import { join } from 'node:path';
import { serve } from '@hono/node-server';
import { createApp } from './app.ts';
import { readConfig } from './config.ts';
import { clock, openData, ROOT, random } from './machine.ts';
import { openAccess } from './store/access.ts';
import { openDirectory } from './store/names.ts';

/** One JSON object a line; never parameters, bodies or names. */
const log = (said: Readonly<Record<string, unknown>>) =>
  process.stdout.write(`${JSON.stringify({ at: new Date().toISOString(), ...said })}\n`);

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

const store = await openData(config.dataDir).catch((error: unknown) => {
  const code = (error as { code?: unknown }).code;
  if (code === 'EACCES' || code === 'EROFS' || code === 'EPERM')
    return stop(`The data directory ${config.dataDir} cannot be written. Give this user the right to, or set LEMEL_DATA.`);
  return stop((error as Error).message);
});
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
};
const app = createApp(web, (error, path) => log({ bug: error instanceof Error ? (error.stack ?? error.message) : String(error), path }));

const server = serve({ fetch: app.fetch, hostname: '127.0.0.1', port: config.port }, async () => {
  log({ serving: config.baseUrl, readOnly: store.readOnly });
  if (store.readOnly) process.stdout.write(`Read only: ${store.readOnly}\n`);
  const [shop] = await store.read("SELECT 1 FROM thing WHERE kind = 'shop'");
  if (shop) process.stdout.write(`Lemel is at ${config.baseUrl}\n`);
  else
    process.stdout.write(
      `Start the ledger here, once, within half an hour:\n${config.baseUrl}/first-run?key=${await access.makeSetupLink()}\n`,
    );
});
server.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code === 'EADDRINUSE') stop(`Port ${config.port} is in use. Stop what uses it, or set LEMEL_PORT to another.`);
  stop(error.message);
});

const DEADLINE_MS = 8000;
let stopping = false;
function shutDown(): void {
  if (stopping) return;
  stopping = true;
  const deadline = setTimeout(() => process.exit(1), DEADLINE_MS);
  server.close(async () => {
    await store.close();
    clearTimeout(deadline);
    process.exit(0);
  });
  if ('closeIdleConnections' in server) server.closeIdleConnections();
}
process.on('SIGINT', shutDown);
process.on('SIGTERM', shutDown);
