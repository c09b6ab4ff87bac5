// What was found.
import type { Hit } from '../src/web/find.ts';

const KINDS: Readonly<Record<string, string>> = { lot: 'scrap lot', skin: 'bench skin' };

export function FindView({ words, hits }: { readonly words: string; readonly hits: readonly Hit[] }) {
  return (
    <>
      <section class="head">
        <h1>{words === '' ? 'Find' : `Found for “${words}”`}</h1>
      </section>
      {hits.length === 0 ? (
        <p class="soft">
          Nothing for “{words}”. Bag codes never use 0, 1, I, L, O, U or Z; names and descriptions want three letters or more.
        </p>
      ) : (
        <ul class="links">
          {hits.map(({ href, words: what, kind }) => (
            <li>
              <a href={href}>{what}</a> <small>{KINDS[kind] ?? kind}</small>
            </li>
          ))}
        </ul>
      )}
    </>
  );
}
