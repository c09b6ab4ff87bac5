import { accepted } from './accepted.js';
import { balanceCalibrated } from './balance-calibrated.js';
import { balanceChecked } from './balance-checked.js';
import { balancePutInService } from './balance-put-in-service.js';
import { containerNamed } from './container-named.js';
import { corrected } from './corrected.js';
import { customerMet } from './customer-met.js';
import { customerTold } from './customer-told.js';
import { deviceEnrolled } from './device-enrolled.js';
import { differenceExplained } from './difference-explained.js';
import { identityChecked } from './identity-checked.js';
import { inspectedBeforeWork } from './inspected-before-work.js';
import { jobClosed } from './job-closed.js';
import { jobOpened } from './job-opened.js';
import { ledgerStarted } from './ledger-started.js';
import { lemelGathered } from './lemel-gathered.js';
import { lotOpened } from './lot-opened.js';
import { markRead } from './mark-read.js';
import { metalAdded } from './metal-added.js';
import { metalCut } from './metal-cut.js';
import { metalReceived } from './metal-received.js';
import { moved } from './moved.js';
import { noteAdded } from './note-added.js';
import { oldPartsReturned } from './old-parts-returned.js';
import { personJoined } from './person-joined.js';
import { photoAdded } from './photo-added.js';
import { pieceChecked } from './piece-checked.js';
import { pieceCleaned } from './piece-cleaned.js';
import { pieceReceived } from './piece-received.js';
import { pieceReturned } from './piece-returned.js';
import { pieceSized } from './piece-sized.js';
import { pieceWeighed } from './piece-weighed.js';
import { placeNamed } from './place-named.js';
import { policySet } from './policy-set.js';
import { promiseMoved } from './promise-moved.js';
import { released } from './released.js';
import { returnedWithException } from './returned-with-exception.js';
import { settingNoted } from './setting-noted.js';
import { skinEmptied } from './skin-emptied.js';
import { stoneSet } from './stone-set.js';
import { stoneSupplied } from './stone-supplied.js';
import { stoneUnset } from './stone-unset.js';
import { stoneWeighed } from './stone-weighed.js';
import { taken } from './taken.js';
import { tareListed } from './tare-listed.js';
import { ticketIssued } from './ticket-issued.js';
import { ticketLost } from './ticket-lost.js';
import { valueStated } from './value-stated.js';
import { weightNotTaken } from './weight-not-taken.js';
import { withdrawn } from './withdrawn.js';
import { workAgreed } from './work-agreed.js';
import { workFinished } from './work-finished.js';
export const ENTRIES = {
  ledger_started: ledgerStarted,
  policy_set: policySet,
  person_joined: personJoined,
  place_named: placeNamed,
  container_named: containerNamed,
  device_enrolled: deviceEnrolled,
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
  metal_cut: metalCut,
  metal_added: metalAdded,
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
};
