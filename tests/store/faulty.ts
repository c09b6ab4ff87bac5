// A connection between the ledger and its file that fails as a bad day would: BUSY at any statement, commits lost before or after they took effect.
import { type Connect, connect } from '../../src/store/connection.ts';
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
  /** Uses of a connection that had failed: each would be the loss of an acknowledged entry. */
  reused: number;
}

const failure = (code: string) => Object.assign(new Error(code), { code });

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
    const guarded = <T>(work: () => T): T => {
      if (failed) happened.reused++;
      try {
        if (strikes(faults.busy, 'busy')) throw failure('SQLITE_BUSY');
        return work();
      } catch (error) {
        failed = true;
        throw error;
      }
    };
    const commit = () => {
      if (strikes(faults.lostBefore, 'lostBefore')) throw failure('CONNECTION_LOST');
      inner.run('COMMIT', []);
      if (strikes(faults.lostAfter, 'lostAfter')) throw failure('CONNECTION_LOST');
    };
    return {
      all: (sql, args) => guarded(() => inner.all(sql, args)),
      // Rolling back is how a connection that failed is let go of.
      run: (sql, args) => (sql === 'ROLLBACK' ? inner.run(sql, args) : guarded(() => (sql === 'COMMIT' ? commit() : inner.run(sql, args)))),
      close: () => inner.close(),
    };
  };
  return { connect: wrapped, happened };
}
