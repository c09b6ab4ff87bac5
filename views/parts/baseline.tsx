// What the owner accepts with a baseline of loss, in words, above the password.
export interface Baseline {
  readonly title: string;
  readonly sentence: string;
  /** Milligrams to the gram. */
  readonly usual: string;
  readonly jobs: number;
  readonly accepted: boolean;
}

export function BaselineAbove({ title, sentence, usual, jobs, accepted }: Baseline) {
  return (
    <>
      <p>
        {title}. {sentence}
      </p>
      {accepted ? (
        <p class="off-words">A baseline is accepted for this work already, and what is finished later is judged by it.</p>
      ) : (
        <>
          <p>
            These {jobs} jobs lost {usual} mg to the gram, all in all. Jobs finished from now on are judged against them, and change nothing
            of what is usual here. An alarm that is raised then stays.
          </p>
          <p>Accept them only if you know of nothing wrong in them. It is accepted once, and not taken back.</p>
        </>
      )}
    </>
  );
}
