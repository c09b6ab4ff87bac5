// An invented shop in a data directory: the stories told up to this moment, and a PIN for everybody in them.
import { join, resolve } from 'node:path';
import { ROOT, random, clock as wall } from '../src/machine.ts';
import { openAccess } from '../src/store/access.ts';
import { openStore } from '../src/store/open.ts';
import type { Ref } from '../src/units/ids.ts';
import { chanceOf } from './chance.ts';
import { SHOP_NAME, STAFF } from './shop.ts';
import { STORIES } from './stories.ts';
import { SHOP_STORY, tellStories } from './telling.ts';

export const PIN = '2468';
export const PASSWORD = 'play in the demo shop';

/** Throws where the directory holds another ledger; answers how many entries were written, none where the demo shop is there already. */
export async function beginShop(dataDir: string): Promise<number> {
  const clock = { now: wall() };
  const store = await openStore({ dir: resolve(dataDir), sqlDir: join(ROOT, 'drizzle'), clock: () => clock.now, random });
  try {
    const [shop] = await store.read("SELECT json_extract(state, '$.says.name') AS name FROM thing WHERE kind = 'shop'");
    if (shop && shop.name !== SHOP_NAME)
      throw new Error(`${dataDir} holds the ledger of ${shop.name}. Name an empty directory in LEMEL_DATA.`);
    if (shop) return 0;
    const photosDir = join(store.dir, 'photos');
    const told = await tellStories({ store, clock, now: clock.now, photosDir, chance: chanceOf(SHOP_NAME) }, STORIES);
    const access = openAccess(store.access, store.pepper, () => clock.now, random);
    for (const name of STAFF) await access.setCredential(told.ref(SHOP_STORY, name) as Ref<'person'>, 'pin', PIN);
    await access.setCredential(told.ref(SHOP_STORY, 'Isolde') as Ref<'person'>, 'password', PASSWORD);
    return told.entries;
  } finally {
    await store.close();
  }
}

/** The same, for a command line: says what was done, or ends the program with the sentence that says what to do. */
export async function beginOrStop(dataDir: string): Promise<void> {
  try {
    const entries = await beginShop(dataDir);
    const what = entries === 0 ? 'is there as it was left; delete the folder to begin it anew' : `was written, ${entries} entries`;
    process.stdout.write(
      `The invented shop in ${dataDir} ${what}.\nSign in as ${STAFF.join(', ')} with PIN ${PIN}; the owner’s password is “${PASSWORD}”.\n`,
    );
  } catch (error) {
    process.stderr.write(`${(error as Error).message}\n`);
    process.exit(1);
  }
}
