// The page around every view: the bar with where one is and who is at the bench, and the strip for what could not be sent.
import type { Child } from 'hono/jsx';

export interface LayoutProps {
  readonly title: string;
  readonly current: string;
  readonly person: { readonly name: string; readonly role: string } | null;
  readonly shop: string | null;
  /** Forms the person began and has not written. */
  readonly drafts: number;
  /** How the program stands where that is not well, in sentences. */
  readonly standing: readonly string[];
  /** Only <main> and the title, for htmx. */
  readonly fragment: boolean;
  readonly children?: Child;
}

/** Shown to the owner alone. */
const OWNERS: readonly string[] = ['/owner', '/setup'];
const PLACES = [
  ['/', 'Counter'],
  ['/bench', 'Bench'],
  ['/safe', 'Safe'],
  ['/calculator', 'Calculator'],
  ['/trail', 'Trail'],
  ['/owner', 'For the owner'],
  ['/setup', 'Setup'],
] as const;

export function Layout({ title, current, person, shop, drafts, standing, fragment, children }: LayoutProps) {
  const full = `${title} · Lemel`;
  const main = (
    <main id="main" tabindex={-1}>
      {children}
    </main>
  );
  if (fragment) {
    return (
      <>
        <title>{full}</title>
        {main}
      </>
    );
  }
  return (
    <html lang="en-GB">
      <head>
        <meta charset="utf-8" />
        <meta name="viewport" content="width=device-width,initial-scale=1" />
        <meta name="htmx-config" content='{"extensions":"trusted"}' />
        <title>{full}</title>
        <link rel="icon" href="/assets/beam.svg" type="image/svg+xml" />
        <link rel="stylesheet" href="/assets/lemel.css" />
        <link rel="stylesheet" href="/assets/screens.css" />
        <link rel="stylesheet" href="/assets/charts.css" />
        <link rel="stylesheet" href="/assets/letter.css" />
        <link rel="stylesheet" href="/assets/bench.css" />
        <script src="/assets/htmx.js" defer />
        <script src="/assets/app.js" defer />
      </head>
      <body>
        <a class="skip" href="#main">
          To the content
        </a>
        {person && <TopBar current={current} person={person} shop={shop} drafts={drafts} />}
        <div id="alert" role="alert" hidden />
        {standing.map((sentence) => (
          <p class="standing">{sentence}</p>
        ))}
        {main}
      </body>
    </html>
  );
}

function TopBar({
  current,
  person,
  shop,
  drafts,
}: Pick<LayoutProps, 'current' | 'shop' | 'drafts'> & { readonly person: { readonly name: string; readonly role: string } }) {
  const places = PLACES.filter(([path]) => !OWNERS.includes(path) || person.role === 'owner');
  return (
    <header class="top">
      <a class="mark" href="/" title={shop ?? 'Lemel'}>
        <svg viewBox="0 0 40 20" width="40" height="20" aria-hidden="true">
          <path
            d="M20 3v13M13 17h14M5 6h30M5 6l-3.5 6h7zM35 6l-3.5 6h7z"
            fill="none"
            stroke="currentColor"
            stroke-width="1.5"
            stroke-linejoin="round"
          />
        </svg>
        Lemel
      </a>
      <nav aria-label="Places">
        {places.map(([path, name]) => (
          <a href={path} {...(path === current ? { 'aria-current': 'page' as const } : {})}>
            {name}
          </a>
        ))}
      </nav>
      <form class="find" role="search" action="/find">
        <label for="q" class="sr">
          Find
        </label>
        <input id="q" name="q" placeholder="Find a bag, a stone, a name" autocomplete="off" />
      </form>
      <form class="who" method="post" action="/lock">
        <b>{person.name}</b> {drafts > 0 && <a href="/drafts">{drafts} not written yet</a>} <button class="plain">Lock</button>
      </form>
    </header>
  );
}
