// Every entry type, by the name that stands in the leaf: the only list.
import type { EntryType } from '../book/entry.ts';
import { accepted } from './accepted.ts';
import { balanceCalibrated } from './balance-calibrated.ts';
import { balanceChecked } from './balance-checked.ts';
import { balancePutInService } from './balance-put-in-service.ts';
import { baselineAccepted } from './baseline-accepted.ts';
import { containerNamed } from './container-named.ts';
import { corrected } from './corrected.ts';
import { customerMet } from './customer-met.ts';
import { customerTold } from './customer-told.ts';
import { deviceEnrolled } from './device-enrolled.ts';
import { deviceWithdrawn } from './device-withdrawn.ts';
import { differenceExplained } from './difference-explained.ts';
import { filingsGathered } from './filings-gathered.ts';
import { identityChecked } from './identity-checked.ts';
import { inspectedBeforeWork } from './inspected-before-work.ts';
import { jobClosed } from './job-closed.ts';
import { jobOpened } from './job-opened.ts';
import { ledgerStarted } from './ledger-started.ts';
import { lemelGathered } from './lemel-gathered.ts';
import { lotOpened } from './lot-opened.ts';
import { markRead } from './mark-read.ts';
import { metalAdded } from './metal-added.ts';
import { metalCut } from './metal-cut.ts';
import { metalReceived } from './metal-received.ts';
import { moved } from './moved.ts';
import { noteAdded } from './note-added.ts';
import { oldPartsReturned } from './old-parts-returned.ts';
import { personJoined } from './person-joined.ts';
import { personLeft } from './person-left.ts';
import { photoAdded } from './photo-added.ts';
import { pieceChecked } from './piece-checked.ts';
import { pieceCleaned } from './piece-cleaned.ts';
import { pieceReceived } from './piece-received.ts';
import { pieceReturned } from './piece-returned.ts';
import { pieceSized } from './piece-sized.ts';
import { pieceWeighed } from './piece-weighed.ts';
import { placeNamed } from './place-named.ts';
import { policySet } from './policy-set.ts';
import { promiseMoved } from './promise-moved.ts';
import { released } from './released.ts';
import { returnedWithException } from './returned-with-exception.ts';
import { settingNoted } from './setting-noted.ts';
import { shopDescribed } from './shop-described.ts';
import { skinEmptied } from './skin-emptied.ts';
import { stockCounted } from './stock-counted.ts';
import { stoneSet } from './stone-set.ts';
import { stoneSupplied } from './stone-supplied.ts';
import { stoneUnset } from './stone-unset.ts';
import { stoneWeighed } from './stone-weighed.ts';
import { taken } from './taken.ts';
import { tareListed } from './tare-listed.ts';
import { termsSet } from './terms-set.ts';
import { ticketIssued } from './ticket-issued.ts';
import { ticketLost } from './ticket-lost.ts';
import { valueStated } from './value-stated.ts';
import { weightNotTaken } from './weight-not-taken.ts';
import { withdrawn } from './withdrawn.ts';
import { workAgreed } from './work-agreed.ts';
import { workFinished } from './work-finished.ts';

export const ENTRIES = {
  ledger_started: ledgerStarted,
  policy_set: policySet,
  shop_described: shopDescribed,
  terms_set: termsSet,
  baseline_accepted: baselineAccepted,
  person_joined: personJoined,
  person_left: personLeft,
  place_named: placeNamed,
  container_named: containerNamed,
  device_enrolled: deviceEnrolled,
  device_withdrawn: deviceWithdrawn,
  balance_put_in_service: balancePutInService,
  balance_checked: balanceChecked,
  balance_calibrated: balanceCalibrated,
  tare_listed: tareListed,
  customer_met: customerMet,
  job_opened: jobOpened,
  piece_received: pieceReceived,
  weight_not_taken: weightNotTaken,
  mark_read: markRead,
  value_stated: valueStated,
  setting_noted: settingNoted,
  photo_added: photoAdded,
  work_agreed: workAgreed,
  ticket_issued: ticketIssued,
  ticket_lost: ticketLost,
  inspected_before_work: inspectedBeforeWork,
  customer_told: customerTold,
  promise_moved: promiseMoved,
  taken,
  released,
  accepted,
  moved,
  piece_cleaned: pieceCleaned,
  piece_weighed: pieceWeighed,
  stone_unset: stoneUnset,
  stone_weighed: stoneWeighed,
  stone_supplied: stoneSupplied,
  lot_opened: lotOpened,
  metal_received: metalReceived,
  stock_counted: stockCounted,
  metal_cut: metalCut,
  metal_added: metalAdded,
  filings_gathered: filingsGathered,
  lemel_gathered: lemelGathered,
  skin_emptied: skinEmptied,
  piece_sized: pieceSized,
  stone_set: stoneSet,
  piece_checked: pieceChecked,
  work_finished: workFinished,
  identity_checked: identityChecked,
  piece_returned: pieceReturned,
  returned_with_exception: returnedWithException,
  old_parts_returned: oldPartsReturned,
  job_closed: jobClosed,
  withdrawn,
  note_added: noteAdded,
  difference_explained: differenceExplained,
  corrected,
} as const;

export type EntryName = keyof typeof ENTRIES;
/** The fields of an entry by its name. */
export type FieldsOf<N extends EntryName> = (typeof ENTRIES)[N]['fields'];
type Code<E> = E extends EntryType<string, infer _F, infer C, infer _A> ? C : never;
type Asks<E> = E extends EntryType<string, infer _F, infer _C, infer A> ? A : never;
export type RefusalCode = Code<(typeof ENTRIES)[EntryName]>;
export type AskCode = Asks<(typeof ENTRIES)[EntryName]>;
