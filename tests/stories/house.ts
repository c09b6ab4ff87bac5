// The invented shop for tests: its stories told into a fresh folder at a fixed moment with fixed randomness, and its pages asked as its owner.
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chanceOf } from '../../seed/chance.ts';
import { SHOP_NAME } from '../../seed/shop.ts';
import type { Story } from '../../seed/story.ts';
import { SHOP_STORY, type Told, tellStories } from '../../seed/telling.ts';
import { createApp } from '../../src/app.ts';
import type { Thing } from '../../src/ledger/thing.ts';
import { openAccess } from '../../src/store/access.ts';
import { openDirectory } from '../../src/store/names.ts';
import { openStore, type Store } from '../../src/store/open.ts';
import { thingOf } from '../../src/store/shelf.ts';
import { instant } from '../../src/units/dates.ts';
import type { Ref } from '../../src/units/ids.ts';
import { SQL_DIR, seededBytes } from '../shop.ts';

export interface House {
  readonly store: Store;
  readonly dir: string;
  readonly told: Told;
  thing(story: string, name: string): Promise<Thing>;
  things(kind: Thing['kind']): Promise<readonly Thing[]>;
  /** A page as the owner sees it, signed in. */
  get(path: string, accept?: string): Promise<Response>;
  readonly bugs: unknown[];
  close(): Promise<void>;
}

/** Tells the stories as of `now`, an ISO instant; throws where one does not end as it says. */
export async function openHouse(stories: readonly Story[], now: string): Promise<House> {
  const dir = mkdtempSync(join(tmpdir(), 'lemel-'));
  const clock = { now: instant(Date.parse(now)) };
  const [read, random] = [() => clock.now, seededBytes(1)];
  const store = await openStore({ dir, sqlDir: SQL_DIR, clock: read, random });
  const photosDir = join(dir, 'photos');
  const close = async () => {
    await store.close();
    rmSync(dir, { recursive: true });
  };
  const stage = { store, clock, now: clock.now, photosDir, chance: chanceOf(SHOP_NAME) };
  const told = await tellStories(stage, stories).catch(async (error: unknown) => {
    await close();
    throw error;
  });
  clock.now = instant(Date.parse(now));
  const access = openAccess(store.access, store.pepper, read, random);
  const cookie = `lemel=${await access.beginSession(told.ref(SHOP_STORY, 'Isolde') as Ref<'person'>, 'this-pc')}`;
  const assetsDir = join(import.meta.dirname, '..', '..', 'views', 'assets');
  const web = {
    store,
    access,
    directory: await openDirectory(store),
    clock: read,
    random,
    baseUrl: 'http://127.0.0.1:8417',
    assetsDir,
    photosDir,
    note: () => undefined,
  };
  const bugs: unknown[] = [];
  const app = createApp(web, (error) => bugs.push(error));
  const things: House['things'] = async (kind) =>
    (await store.read('SELECT state FROM thing WHERE kind = ? ORDER BY n', [kind])).map(thingOf);
  return {
    ...{ store, dir, told, things, bugs },
    async thing(story, name) {
      const [row] = await store.read('SELECT state FROM thing WHERE id = ?', [told.ref(story, name)]);
      if (!row) throw new Error(`no thing for ${name}`);
      return thingOf(row);
    },
    get: async (path, accept = 'text/html') => app.request(path, { headers: { cookie, accept } }),
    close,
  };
}
