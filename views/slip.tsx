// What the customer takes away, what stays with the shop, and what goes on the bag.
import { Counterfoil, Label, Slip, type SlipShown } from './parts/slip.tsx';

export function SlipView(slip: SlipShown) {
  return (
    <>
      <section class="head on-screen">
        <p class="written" role="status">
          Written and bagged as <b>{slip.bag}</b>.
        </p>
        <h1>{slip.title}</h1>
        <div class="act">
          <button type="button" data-print>
            Print
          </button>
          <a href={`/ticket?after=${slip.job}`}>Another piece for the same customer</a>
          <a href={`/jobs/${slip.job}`}>The job</a>
          <a href="/">Counter</a>
          <IssueSlip title={slip.title} action={`/jobs/${slip.job}/slip`} again />
        </div>
      </section>
      <div class="slips">
        <Slip {...slip} />
        <Counterfoil {...slip} />
      </div>
      <Label {...slip} />
    </>
  );
}

/** Issues a slip: the first, or a fresh one that names the record as it stands now. */
export function IssueSlip({ title, action, again }: { readonly title: string; readonly action: string; readonly again: boolean }) {
  const button = again ? <button class="plain">Issue a fresh one</button> : <button>Issue it</button>;
  return (
    <form method="post" action={action}>
      {!again && <h1>{title}</h1>}
      {button}
    </form>
  );
}
