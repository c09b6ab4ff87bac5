// What stands above a hand-back: its one sentence, and once it was stopped, the way home with an exception.
interface Props {
  readonly sentence: string;
  readonly job: string;
  readonly bag: string;
  /** It was stopped: the other way is offered. */
  readonly offers: boolean;
}

export function ExceptionOffer({ sentence, job, bag, offers }: Props) {
  return (
    <>
      <p class="sentence">{sentence}</p>
      <p class="soft">
        Bag{' '}
        <a class="mini" href={`/jobs/${job}`}>
          {bag}
        </a>
      </p>
      {offers && (
        <p class="again">
          Count again first. If it cannot be put right while the customer waits, tell them what does not agree and{' '}
          <a href={`/jobs/${job}/hand-back-with-exception`}>hand it back with an exception</a>, which they sign.
        </p>
      )}
    </>
  );
}
