// What was found, the job's bag beside each.
export interface Hit {
  readonly href: string;
  readonly words: string;
  readonly kind: string;
  /** The bag it lies in. */
  readonly bag: string;
}

const KINDS: Readonly<Record<string, string>> = { lot: 'scrap lot', skin: 'bench skin' };

export function FindView({ words, hits }: { readonly words: string; readonly hits: readonly Hit[] }) {
  return (
    <>
      <section class="head">
        <h1>{words === '' ? 'Find' : `Found for “${words}”`}</h1>
        {words === '' && <p class="soft">Type or scan a bag, a name, the digits of a telephone, a stone, a mark.</p>}
      </section>
      {hits.length === 0 && words !== '' && (
        <p class="soft">Nothing for “{words}”. Bag codes never use 0, 1, I, L, O, U or Z; words want three letters or more.</p>
      )}
      {hits.length > 0 && (
        <ul class="links">
          {hits.map(({ href, words: what, kind, bag }) => (
            <li>
              <a href={href}>{what}</a> <small>{[KINDS[kind] ?? kind, bag].filter(Boolean).join(' · ')}</small>
            </li>
          ))}
        </ul>
      )}
    </>
  );
}
