// Whose is it? A search that stands before the form, so that it works without scripts.
interface Props {
  readonly action: string;
  readonly q: string;
  /** How many customers were found; null where nobody was looked for. */
  readonly matches: number | null;
}

export function Whose({ action, q, matches }: Props) {
  return (
    <form class="whose" method="get" action={action} role="search" aria-label="Customers">
      <label class="l" for="whose">
        Whose is it?
      </label>
      <span class="with-unit">
        <input class="text" id="whose" name="q" value={q} placeholder="Phone digits or a name" autocomplete="off" />
        <button class="plain">Look</button>
      </span>
      {matches !== null && <small>{found(matches)}</small>}
    </form>
  );
}

function found(matches: number): string {
  if (matches === 0) return 'Nobody known by that. Write the name below.';
  return matches === 1 ? 'One found. Somebody else’s? Look again, or write a new name.' : `${matches} found. Choose below.`;
}
