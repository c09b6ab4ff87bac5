// What the customer takes away, what stays with the shop, and what goes on the bag.
import { Tag } from './parts/tag.tsx';

export interface QrCode {
  /** Modules a side, without the quiet zone. */
  readonly side: number;
  readonly path: string;
}

interface Props {
  readonly shop: string;
  readonly job: string;
  readonly bag: string;
  readonly metal: string;
  readonly title: string;
  readonly pieces: readonly string[];
  readonly promise: string | null;
  readonly customer: string;
  readonly first: number;
  readonly last: number;
  readonly size: number;
  readonly note: string;
  readonly fingerprint: string;
  readonly noteCode: QrCode;
  readonly bagCode: QrCode;
}

export function SlipView(slip: Props) {
  return (
    <>
      <section class="head on-screen">
        <p class="written" role="status">
          Written and bagged as <b>{slip.bag}</b>.
        </p>
        <h1>{slip.title}</h1>
        <div class="act">
          <button type="button" data-print>
            Print
          </button>
          <a href={`/ticket?after=${slip.job}`}>Another piece for the same customer</a>
          <a href={`/jobs/${slip.job}`}>The job</a>
          <a href="/">Counter</a>
          <IssueSlip title={slip.title} action={`/jobs/${slip.job}/slip`} again />
        </div>
      </section>
      <div class="slips">
        <Slip {...slip} />
        <Counterfoil {...slip} />
      </div>
      <Label {...slip} />
    </>
  );
}

/** Issues a slip: the first, or a fresh one that names the record as it stands now. */
export function IssueSlip({ title, action, again }: { readonly title: string; readonly action: string; readonly again: boolean }) {
  const button = again ? <button class="plain">Issue a fresh one</button> : <button>Issue it</button>;
  return (
    <form method="post" action={action}>
      {!again && <h1>{title}</h1>}
      {button}
    </form>
  );
}

/** Quiet zone of four modules (ISO/IEC 18004, 5.3.8). */
const QUIET = 4;

function Qr({ code, words }: { readonly code: QrCode; readonly words: string }) {
  const side = code.side + 2 * QUIET;
  return (
    <svg class="qr" viewBox={`${-QUIET} ${-QUIET} ${side} ${side}`} role="img" aria-label={words}>
      <path d={code.path} />
    </svg>
  );
}

function Slip(slip: Props) {
  return (
    <section class="slip" aria-label={slip.title}>
      <p class="soft">{slip.shop}</p>
      <Tag code={slip.bag} metal={slip.metal} />
      <ul>
        {slip.pieces.map((piece) => (
          <li>{piece}</li>
        ))}
      </ul>
      {slip.promise && (
        <p>
          Ready by <b>{slip.promise}</b>
        </p>
      )}
      <p>Bring this slip. We count the stones out with you.</p>
      <div class="signed">
        <Qr code={slip.noteCode} words="The signed note of our record" />
        <small>
          Entries {slip.first} to {slip.last} are yours, in a record of {slip.size} entries that we signed when you left. Keep this: the
          code is our signature. Our key: <code>{slip.fingerprint}</code>
        </small>
      </div>
    </section>
  );
}

function Counterfoil({ bag, metal, title, customer, pieces, promise }: Props) {
  return (
    <section class="slip counterfoil" aria-label="Counterfoil">
      <p class="soft">{title}: the shop’s part</p>
      <Tag code={bag} metal={metal} />
      <p>
        <b>{customer}</b>
      </p>
      <p>{pieces.join('; ')}</p>
      {promise && <p>Ready by {promise}</p>}
      <p class="signature">Left and agreed, signed</p>
      <p class="signature">Taken home, signed</p>
    </section>
  );
}

function Label({ bag, metal, pieces, promise, bagCode }: Props) {
  return (
    <section class="bag-label" aria-label="Bag label">
      <Tag code={bag} metal={metal} />
      <small>
        {pieces.join('; ')}
        {promise && ` · by ${promise}`}
      </small>
      <Qr code={bagCode} words={`Opens bag ${bag}`} />
    </section>
  );
}
