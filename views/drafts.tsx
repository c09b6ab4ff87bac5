// Forms that were begun and not written, each to be gone on with or thrown away.
interface Props {
  readonly drafts: readonly {
    readonly key: string;
    readonly href: string;
    readonly title: string;
    readonly bag: string;
    readonly savedAt: string;
  }[];
}

export function DraftsView({ drafts }: Props) {
  return (
    <>
      <section class="head">
        <h1>Not written yet</h1>
        <p class="soft">
          {drafts.length === 0
            ? 'Nothing is waiting: every form you began was written or thrown away.'
            : 'You were writing these. They are not in the ledger.'}
        </p>
      </section>
      <ul class="unwritten">
        {drafts.map(({ key, href, title, bag, savedAt }) => (
          <li>
            <span>
              <b>{title}</b>
              {bag !== '' && (
                <>
                  {' '}
                  <span class="mini">{bag}</span>
                </>
              )}
              <small>{savedAt}</small>
            </span>
            <a class="button" href={href}>
              Go on<span class="sr"> with {title}</span>
            </a>
            <form method="post" action="/drafts/drop">
              <input type="hidden" name="key" value={key} />
              <button class="plain">
                Throw away<span class="sr"> {title}</span>
              </button>
            </form>
          </li>
        ))}
      </ul>
    </>
  );
}
