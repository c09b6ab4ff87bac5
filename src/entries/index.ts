// Every entry type, by the name that stands in the leaf: the only list.
import type { EntryType } from '../book/entry.ts';
import { balancePutInService } from './balance-put-in-service.ts';
import { corrected } from './corrected.ts';
import { customerMet } from './customer-met.ts';
import { jobClosed } from './job-closed.ts';
import { jobOpened } from './job-opened.ts';
import { ledgerStarted } from './ledger-started.ts';
import { lotOpened } from './lot-opened.ts';
import { metalAdded } from './metal-added.ts';
import { metalCut } from './metal-cut.ts';
import { metalReceived } from './metal-received.ts';
import { noteAdded } from './note-added.ts';
import { personJoined } from './person-joined.ts';
import { pieceChecked } from './piece-checked.ts';
import { pieceReceived } from './piece-received.ts';
import { pieceReturned } from './piece-returned.ts';
import { pieceWeighed } from './piece-weighed.ts';
import { placeNamed } from './place-named.ts';
import { policySet } from './policy-set.ts';
import { settingNoted } from './setting-noted.ts';
import { stoneSet } from './stone-set.ts';
import { stoneUnset } from './stone-unset.ts';
import { taken } from './taken.ts';
import { workAgreed } from './work-agreed.ts';
import { workFinished } from './work-finished.ts';

export const ENTRIES = {
  ledger_started: ledgerStarted,
  policy_set: policySet,
  person_joined: personJoined,
  place_named: placeNamed,
  balance_put_in_service: balancePutInService,
  customer_met: customerMet,
  job_opened: jobOpened,
  piece_received: pieceReceived,
  setting_noted: settingNoted,
  work_agreed: workAgreed,
  taken,
  stone_unset: stoneUnset,
  lot_opened: lotOpened,
  metal_received: metalReceived,
  metal_cut: metalCut,
  metal_added: metalAdded,
  piece_weighed: pieceWeighed,
  stone_set: stoneSet,
  piece_checked: pieceChecked,
  work_finished: workFinished,
  piece_returned: pieceReturned,
  job_closed: jobClosed,
  note_added: noteAdded,
  corrected,
} as const;

export type EntryName = keyof typeof ENTRIES;
/** The fields of an entry by its name. */
export type FieldsOf<N extends EntryName> = (typeof ENTRIES)[N]['fields'];
type Code<E> = E extends EntryType<string, infer _F, infer C, infer _A> ? C : never;
type Asks<E> = E extends EntryType<string, infer _F, infer _C, infer A> ? A : never;
export type RefusalCode = Code<(typeof ENTRIES)[EntryName]>;
export type AskCode = Asks<(typeof ENTRIES)[EntryName]>;
