// One job on screen: its bag, whether it reckons, the one next entry, and its ledger, newest first.
import type { JobReckoning } from '../src/projections/job-reckoning.ts';
import type { PhotoTaken } from '../src/projections/photos.ts';
import { Ledger, type LedgerLine } from './parts/ledger.tsx';
import { Watch } from './parts/news.tsx';
import { Cautions } from './parts/notices.tsx';
import { Reckoning } from './parts/reckoning.tsx';
import { Tag } from './parts/tag.tsx';

export type Link = readonly [href: string, words: string];
interface Props {
  readonly facts: {
    readonly id: string;
    readonly bag: string;
    readonly metal: string;
    readonly title: string;
    readonly customer: string | null;
    readonly holder: string | null;
    readonly place: string | null;
    readonly status: string;
    readonly promise: string | null;
    /** Short ticket, or full path and why. */
    readonly path: string;
  };
  readonly lines: readonly LedgerLine[];
  readonly reckoned: JobReckoning;
  readonly next: Link | null;
  readonly links: readonly Link[];
  readonly photos: readonly PhotoTaken[];
  readonly mayWrite: boolean;
  /** What the ledger's own weights call for. */
  readonly cautions: readonly string[];
  readonly written: LedgerLine | null;
}

export function JobView({ facts, lines, reckoned, next, links, photos, mayWrite, cautions, written }: Props) {
  const where = [
    facts.customer,
    facts.holder && `with ${facts.holder}`,
    facts.place,
    facts.promise && `promised ${facts.promise}`,
    facts.status,
    facts.path,
  ];
  return (
    <>
      {written && (
        <p class="written" role="status">
          Entry {written.seq} written: {written.said}. <a href={`/entries/${written.seq}`}>Look at it or correct it</a>
        </p>
      )}
      <section class="head">
        <Tag code={facts.bag} metal={facts.metal} />
        <h1>{facts.title}</h1>
        <p class="soft">{where.filter(Boolean).join(' · ')}</p>
        <Ways job={facts.id} mayWrite={mayWrite} />
        <Watch job={facts.id} after={lines.length} />
      </section>
      <Reckoning job={facts.id} reckoned={reckoned} />
      <Cautions cautions={cautions} />
      <div class="two">
        <div class="beside">
          <section class="next" aria-labelledby="n">
            <h2 id="n">Next</h2>
            {next ? (
              <a class="button" href={next[0]}>
                {next[1]}
              </a>
            ) : (
              <p class="soft">Nothing is due.</p>
            )}
            {links.length > 0 && (
              <details>
                <summary>Write something else</summary>
                <ul class="links">
                  {links.map(([href, words]) => (
                    <li>
                      <a href={href}>{words}</a>
                    </li>
                  ))}
                </ul>
              </details>
            )}
          </section>
          <Photographs job={facts.id} photos={photos} mayWrite={mayWrite} />
        </div>
        <section aria-labelledby="l">
          <h2 id="l">What has happened</h2>
          <Ledger lines={lines} />
          {lines.length === 0 && <p class="soft">Nothing yet after take-in.</p>}
        </section>
      </div>
    </>
  );
}

const WAYS = [
  ['/stones', 'Stones'],
  ['/reckoning', 'The reckoning'],
  ['?face=customer', 'Turn the screen'],
  ['/letter', 'Letter'],
] as const;

function Ways({ job, mayWrite }: { readonly job: string; readonly mayWrite: boolean }) {
  return (
    <p class="ways">
      {WAYS.filter(([path]) => mayWrite || path !== '/letter').map(([path, words]) => (
        <a href={`/jobs/${job}${path}`}>{words}</a>
      ))}
    </p>
  );
}

function Photographs({ job, photos, mayWrite }: { readonly job: string } & Pick<Props, 'photos' | 'mayWrite'>) {
  return (
    <section aria-labelledby="p">
      <h2 id="p">Photographs</h2>
      <ul class="photos">
        {photos.map(({ seq, hash, shows }) => (
          <li>
            <a href={`/photos/${hash}`}>
              <img src={`/photos/${hash}`} alt={shows} loading="lazy" />
            </a>
            <small>
              {shows} · <a href={`/entries/${seq}`}>{seq}</a>
            </small>
          </li>
        ))}
      </ul>
      {photos.length === 0 && <p class="soft">No photograph yet.</p>}
      {mayWrite && <a href={`/jobs/${job}/write/photo_added`}>Add a photograph</a>}
    </section>
  );
}
