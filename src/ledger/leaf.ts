// The leaf: the accepted entry plus its stamp. System members come from the writer and are never spread with form data.
import type { Now, Stamp } from '../book/entry.ts';
import type { RefusalCode } from '../entries/index.ts';
import type { Leaf as Envelope } from '../log/leaf.ts';
import type { Sha256 } from '../log/merkle.ts';
import type { Instant } from '../units/dates.ts';
import type { Ref } from '../units/ids.ts';

/** The envelope that every verifier knows, with the stamp's own types. */
export type Leaf = Omit<Envelope, keyof Stamp> & Stamp;
/** One entry to be written. */
export interface Line {
  readonly type: string;
  readonly data: Readonly<Record<string, unknown>>;
  readonly occurredAt?: Instant;
}
/** A sheet or a single form: a list of entries, all or none. */
export interface Command {
  readonly id: string;
  readonly by: Ref<'person'>;
  readonly auth: Stamp['auth'];
  readonly device: string;
  readonly witness?: Ref<'person'>;
  /** The job whose form it is: nothing of another job is written by it. */
  readonly job?: string;
  /** The terms that both agreed on, by their name: they must be those in force when it is written. */
  readonly terms?: string;
  /** The size of each subject's stream as the person saw it on the form. */
  readonly seen: Readonly<Record<string, number>>;
  readonly lines: readonly Line[];
}
/** What the writer brings: the log's origin, the next sequence number, digests, fresh randomness, policy and the clock. */
export interface Writer {
  readonly log: string;
  readonly seq: number;
  /** The shop's stream; none before the first leaf. */
  readonly shop: string | undefined;
  readonly at: Stamp['at'];
  readonly today: Now['today'];
  readonly alone: boolean;
  readonly sha256: Sha256;
  readonly random: (bytes: number) => Uint8Array;
}
/** Refusals of the framework itself, before an entry's own. */
export type FrameRefusal =
  | 'invalid'
  | 'not_found'
  | 'already_begun'
  | 'two_jobs'
  | 'not_in_force'
  | 'tare_not_listed'
  | 'terms_changed'
  | 'out_of_place'
  | 'not_staff'
  | 'screen_withdrawn'
  | 'balance_unit'
  | 'over_largest_load'
  | 'nothing_left'
  | 'would_not_stand'
  | 'not_yours_to_write'
  | 'pin_needed'
  | 'password_needed'
  | 'in_the_future';
export type FrameAsk = 'not_a_step' | 'not_expected';
export type Answer =
  | { readonly answer: 'written'; readonly from: number; readonly size: number }
  | {
      readonly answer: 'refused';
      readonly line: number;
      readonly code: RefusalCode | FrameRefusal;
      readonly say: string;
      readonly field?: string;
    }
  | { readonly answer: 'asked'; readonly line: number; readonly code: string; readonly say: string; readonly field?: string }
  | { readonly answer: 'conflict'; readonly stream: string; readonly since: readonly number[] }
  | { readonly answer: 'form reused'; readonly recorded: Extract<Answer, { answer: 'written' }> };
/** Why a line is not written: it breaks a rule, or must be weighed or said again first. */
export type Stopped = Extract<Answer, { answer: 'refused' | 'asked' }>;

/** A leaf as it is kept: parsed, with its hash (RFC 6962, base64url) and, where they could be opened, its sealed values. */
export interface Kept {
  readonly seq: number;
  readonly hash: string;
  readonly leaf: Leaf;
  readonly opened: Readonly<Record<string, unknown>>;
}
