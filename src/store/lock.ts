// One process for one data directory: a write transaction held open on lock.db for life, freed by the system when the process dies.
import { connect } from './sqlite.ts';

/** Another server has these data open. */
export class AlreadyOpen extends Error {}

/** Takes the lock, or throws AlreadyOpen; answers how to let go of it. */
export async function takeLock(path: string): Promise<() => void> {
  const client = connect(path, 'write');
  try {
    const held = await client.transaction('write');
    return () => {
      held.close();
      client.close();
    };
  } catch (error) {
    client.close();
    if (/BUSY|LOCKED/.test(String((error as { code?: unknown }).code))) {
      throw new AlreadyOpen('Another Lemel is running on these data. Use that one, or stop it first.');
    }
    throw error;
  }
}
