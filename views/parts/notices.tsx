// What stands beside a form: what somebody else wrote meanwhile, and the usual cautions.

export function Since({ since }: { readonly since: readonly number[] }) {
  return (
    <div class="again" role="alert">
      <b>Somebody wrote on this job while you typed.</b> What you typed is kept below. Look at{' '}
      {since.map((seq) => (
        <>
          <a href={`/entries/${seq}`}>entry {seq}</a>{' '}
        </>
      ))}
      and send it again if it still holds.
    </div>
  );
}

/** Where the metal of a piece is not in stock yet, the way to it. */
export const NotInStock = ({ metal, words }: { readonly metal: string; readonly words: string }) => (
  <p class="sentence">
    No stock of {words} is listed yet. Is some let in? <a href={`/write/metal_received?metal=${metal}`}>Receive metal</a> first.
  </p>
);

export function Cautions({ cautions }: { readonly cautions: readonly string[] }) {
  if (cautions.length === 0) return null;
  return (
    <aside class="cautions" aria-label="Usual cautions">
      <b>Usual cautions</b>
      <ul>
        {cautions.map((caution) => (
          <li>{caution}</li>
        ))}
      </ul>
      <small>Follow the safety data sheet, your local code and a licensed practitioner.</small>
    </aside>
  );
}
