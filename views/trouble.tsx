// A request that is not served, as a page: what is wrong, what to do, and a way on.
interface Props {
  readonly title: string;
  readonly say: string;
  /** Where to go on: the address and its words. */
  readonly ways: readonly (readonly [href: string, words: string])[];
}

export function Trouble({ title, say, ways }: Props) {
  return (
    <section class="head">
      <h1>{title}</h1>
      <p>{say}</p>
      <p class="ways">
        {ways.map(([href, words]) => (
          <a href={href}>{words}</a>
        ))}
      </p>
    </section>
  );
}
