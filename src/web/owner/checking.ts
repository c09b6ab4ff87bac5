// The check of the log, one at a time, whoever asks: it goes on when the page is left, and what came of it is kept until the next.

import type { Checked } from '../../../views/trail.tsx';
import { base64 } from '../../log/bytes.ts';
import type { Audit } from '../../store/beside.ts';
import { StorageFault } from '../../store/connection.ts';
import { Missing } from '../../store/present.ts';
import type { Web } from '../session/context.ts';

export interface Checking {
  /** Begins a check unless one is going on; answers what came of it, or how far it is when that takes long. */
  ask(): Promise<Checked>;
  /** How far the check is, what came of the last one, or null before the first. */
  state(): Checked | null;
}

const PATIENCE_MS = 2000;

export function openChecking({ store, clock }: Pick<Web, 'store' | 'clock'>): Checking {
  let going: Promise<Checked> | null = null;
  let last: Checked | null = null;
  let done = 0;
  const begin = async (): Promise<Checked> => {
    done = 0;
    const found = await store
      .check((so) => {
        done = so;
      })
      .then(whatCame, whatFailed);
    last = { ...found, at: new Date(clock()).toISOString().slice(0, 16).replace('T', ' ').concat(' UTC') };
    going = null;
    return last;
  };
  const soFar = (): Checked => ({ whole: null, say: `${done} entries so far. This page may be left: Trail says what came of it.` });
  return {
    ask() {
      going ??= begin();
      return Promise.race([going, new Promise<Checked>((resolve) => setTimeout(() => resolve(soFar()), PATIENCE_MS).unref())]);
    },
    state: () => (going ? soFar() : last),
  };
}

function whatCame(found: Audit): Checked {
  if ('bad' in found) return { whole: false, say: found.bad.say, seq: found.bad.seq };
  const { size, signatures, opened, photographs, root, told } = found;
  const say = `${size} entries, whole and unaltered: every one leads to the root that was signed (${signatures} signatures); ${opened} sealed values and ${photographs} photographs fit their digests.`;
  return { whole: true, say: [say, ...told].join(' '), root: base64(root) };
}

function whatFailed(error: unknown): Checked {
  if (error instanceof StorageFault || error instanceof Missing) return { whole: false, say: error.message };
  throw error;
}
