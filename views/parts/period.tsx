// A period to look at: two days and a button, in the address.
export function Period({ action, from, to }: { readonly action: string; readonly from: string; readonly to: string }) {
  return (
    <form class="period" action={action}>
      <label class="l" for="from">
        From
      </label>
      <input class="text" type="date" id="from" name="from" value={from} />
      <label class="l" for="to">
        to
      </label>
      <input class="text" type="date" id="to" name="to" value={to} />
      <button>Show</button>
    </form>
  );
}
