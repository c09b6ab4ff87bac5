// The three papers of a job taken in: the customer's slip, the shop's counterfoil, and the label on the bag.
import { Qr } from './qr.tsx';
import { Tag } from './tag.tsx';

export interface SlipShown {
  readonly shop: string;
  /** Address, phone and email, a line each. */
  readonly reach: readonly string[];
  readonly job: string;
  readonly bag: string;
  readonly metal: string;
  readonly title: string;
  readonly left: string | null;
  readonly pieces: readonly { readonly what: string; readonly weight: string; readonly condition: string | null }[];
  readonly stones: number;
  readonly work: string | null;
  readonly price: string;
  readonly ready: string | null;
  readonly metalGoes: readonly string[];
  readonly terms: { readonly name: string; readonly lines: readonly string[] } | null;
  readonly customer: string;
  readonly first: number;
  readonly last: number;
  readonly size: number;
  readonly fingerprint: string;
  /** The signed note, as printed in the code. */
  readonly note: string;
  /** Where the label's code leads. */
  readonly bagLink: string;
}

export function Slip(slip: SlipShown) {
  return (
    <section class="slip" aria-label={slip.title}>
      <header>
        <div>
          <b>{slip.shop}</b>
          {slip.reach.map((line) => (
            <span>{line}</span>
          ))}
          <Tag code={slip.bag} metal={slip.metal} />
          <span>{slip.title}</span>
          {slip.left && <span>left {slip.left}</span>}
        </div>
        <Qr text={slip.note} label="The signed note of our record" />
      </header>
      <Facts {...slip} />
      <p>Bring this slip.{slip.stones > 0 && ' We count the stones out with you.'}</p>
      {slip.terms && <Terms terms={slip.terms} />}
      <small>
        The code is our signature on a record of {slip.size} entries when you left; {slip.first} to {slip.last} are yours. Our key:{' '}
        <code>{slip.fingerprint}</code>
      </small>
    </section>
  );
}

function Facts({ pieces, work, price, ready, metalGoes }: SlipShown) {
  const rows = [
    ...pieces.flatMap(({ what, weight, condition }) => [
      ['You left', `${what}; ${weight}`],
      ...(condition === null ? [] : [['As it was', condition]]),
    ]),
    ['We do', work ?? 'to be agreed'],
    ['Price', price],
    ['Ready by', ready ?? 'to be agreed'],
    ...(metalGoes.length === 0 ? [] : [['Metal', metalGoes.join(' ')]]),
  ];
  return (
    <dl>
      {rows.map(([label, text]) => (
        <div>
          <dt>{label}</dt>
          <dd>{text}</dd>
        </div>
      ))}
    </dl>
  );
}

const Terms = ({ terms: { name, lines } }: { readonly terms: NonNullable<SlipShown['terms']> }) => (
  <section class="terms">
    <h2>
      Our terms <small>{name}</small>
    </h2>
    <ol>
      {lines.map((line) => (
        <li>{line}</li>
      ))}
    </ol>
  </section>
);

export function Counterfoil({ bag, metal, title, customer, left, pieces, work, price, ready, terms }: SlipShown) {
  return (
    <section class="slip counterfoil" aria-label="Counterfoil">
      <header>
        <div>
          <Tag code={bag} metal={metal} />
          <span>{title}: the shop’s part</span>
          {left && <span>left {left}</span>}
        </div>
      </header>
      <p>
        <b>{customer}</b>
      </p>
      {pieces.map(({ what, weight }) => (
        <p>
          {what}; {weight}
        </p>
      ))}
      <p>{[work, price, ready && `ready by ${ready}`].filter(Boolean).join('; ')}</p>
      <p class="signature">Left and agreed{terms && `, under the terms ${terms.name}`}: signed</p>
      <p class="signature">Taken home: signed</p>
    </section>
  );
}

export function Label({ bag, metal, pieces, ready, bagLink }: SlipShown) {
  return (
    <section class="bag-label" aria-label="Bag label">
      <Tag code={bag} metal={metal} />
      <small>
        {pieces.map(({ what }) => what).join('; ')}
        {ready && ` · by ${ready}`}
      </small>
      <Qr text={bagLink} label={`Opens bag ${bag}`} />
    </section>
  );
}
