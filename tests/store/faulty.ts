// A client between the ledger and its file that fails as a bad day would: BUSY at any statement, commits lost before or after they took effect.
import { type Client, LibsqlError } from '@libsql/client';
import { type Connect, connect } from '../../src/store/sqlite.ts';
import { seededBytes } from '../shop.ts';

export interface Faults {
  /** Chances out of 256, taken at each statement and at each commit. */
  readonly busy: number;
  readonly lostBefore: number;
  readonly lostAfter: number;
}
export interface Happened {
  busy: number;
  lostBefore: number;
  lostAfter: number;
  clients: number;
  /** Uses of a client that had failed: each would be the loss of an acknowledged entry. */
  reused: number;
}

const busy = () => new LibsqlError('database is locked', 'SQLITE_BUSY', 'SQLITE_BUSY', 5);
const lost = () => new LibsqlError('connection lost', 'SQLITE_UNKNOWN');

/** Connects through faults, seeded; `happened` counts them. */
export function faulty(seed: number, faults: Faults): { readonly connect: Connect; readonly happened: Happened } {
  const random = seededBytes(seed);
  const happened: Happened = { busy: 0, lostBefore: 0, lostAfter: 0, clients: 0, reused: 0 };
  const strikes = (chance: number, kind: 'busy' | 'lostBefore' | 'lostAfter'): boolean => {
    const hit = (random(1)[0] ?? 0) < chance;
    if (hit) happened[kind]++;
    return hit;
  };
  const wrapped: Connect = (path, use) => {
    const inner = connect(path, use);
    let failed = false;
    happened.clients++;
    const guarded = async <T>(work: () => Promise<T>): Promise<T> => {
      if (failed) happened.reused++;
      try {
        if (strikes(faults.busy, 'busy')) throw busy();
        return await work();
      } catch (error) {
        failed = true;
        throw error;
      }
    };
    const client = {
      execute: (statement: Parameters<Client['execute']>[0]) => guarded(() => inner.execute(statement)),
      async transaction() {
        const transaction = await guarded(() => inner.transaction('write'));
        return {
          execute: (statement: Parameters<Client['execute']>[0]) => guarded(() => transaction.execute(statement as string)),
          commit: () =>
            guarded(async () => {
              if (strikes(faults.lostBefore, 'lostBefore')) throw lost();
              await transaction.commit();
              if (strikes(faults.lostAfter, 'lostAfter')) throw lost();
            }),
          close: () => transaction.close(),
        };
      },
      close: () => inner.close(),
    };
    return client as unknown as Client;
  };
  return { connect: wrapped, happened };
}
