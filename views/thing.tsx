// A lot, stock, skin, balance or place, with the entries that tell of it.
import { Ledger, type LedgerLine } from './parts/ledger.tsx';

const KINDS: Readonly<Record<string, string>> = {
  lot: 'Scrap lot',
  stock: 'Stock',
  skin: 'Bench skin',
  balance: 'Balance',
  place: 'Place',
};

interface Props {
  readonly name: string;
  readonly kind: string;
  readonly weight: string | null;
  readonly lines: readonly LedgerLine[];
  /** Where the entries before these are. */
  readonly older: string | null;
}

export function ThingView({ name, kind, weight, lines, older }: Props) {
  return (
    <>
      <section class="head">
        <p class="soft">{KINDS[kind] ?? kind}</p>
        <h1>{name}</h1>
        {weight && (
          <p>
            In it by its entries: <b>{weight}</b>
          </p>
        )}
      </section>
      <Ledger lines={lines} />
      {older !== null && <a href={older}>Earlier entries</a>}
    </>
  );
}
