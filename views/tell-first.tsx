// What the shop is asked before a letter goes out that says that something does not agree.
interface TellProps {
  readonly job: string;
  readonly bag: string;
  readonly disagreements: readonly string[];
  readonly caution: string;
}

export function TellFirst({ job, bag, disagreements, caution }: TellProps) {
  return (
    <section class="head">
      <h1>Tell your insurer first</h1>
      <p>This letter would say that something does not agree:</p>
      <ul class="reasons">
        {disagreements.map((one) => (
          <li>{one}</li>
        ))}
      </ul>
      <p class="again">{caution}</p>
      <p class="act">
        <a class="button" href={`/jobs/${job}/write/difference_explained`}>
          Explain the difference
        </a>
        <a href={`/jobs/${job}/letter?told=yes`}>Our insurer knows: show the letter</a>
        <a href={`/jobs/${job}`}>Back to {bag}</a>
      </p>
    </section>
  );
}
