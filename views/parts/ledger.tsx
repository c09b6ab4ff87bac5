// The entries of a job or a thing, newest first: what was corrected is struck, and its corrections stand joined below it.
export interface LedgerLine {
  readonly seq: number;
  readonly hash: string;
  readonly type: string;
  readonly said: string;
  readonly weight: string;
  readonly by: string;
  readonly at: string;
  /** Recorded more than a quarter of an hour after it happened. */
  readonly late: string | null;
  /** What was written first, where a correction now stands for it. */
  readonly first: { readonly said: string; readonly weight: string } | null;
  readonly correctedBy: readonly number[];
  readonly corrects: number | null;
}

export function Ledger({ lines }: { readonly lines: readonly LedgerLine[] }) {
  const here = new Map(lines.map((line) => [line.seq, line]));
  const isJoined = ({ corrects }: LedgerLine) => corrects !== null && here.has(corrects);
  const joinedTo = ({ correctedBy }: LedgerLine) => correctedBy.flatMap((seq) => here.get(seq) ?? []);
  return (
    <ol class="ledger">
      {lines
        .filter((line) => !isJoined(line))
        .flatMap((line) => [
          <Line line={line} />,
          ...joinedTo(line).map((correction, n, all) => <Line line={correction} weight={n === all.length - 1 ? line.weight : ''} />),
        ])}
    </ol>
  );
}

/** `weight` is what stands after the correction that this line is. */
function Line({ line, weight }: { readonly line: LedgerLine; readonly weight?: string }) {
  const isStruck = line.first !== null;
  const isSaidAlready = line.first === null && line.said.includes(line.weight);
  return (
    <li class={isStruck ? 'struck' : weight === undefined ? '' : 'joined'}>
      <b>{isStruck ? <s>{line.first?.said}</s> : line.said}</b>
      <span class="num">{isStruck ? <s>{line.first?.weight}</s> : (weight ?? (isSaidAlready ? '' : line.weight))}</span>
      <small>
        <a href={`/entries/${line.seq}`}>{line.seq}</a> · {line.at} · {line.by}
        {line.late && ` · written late: it happened ${line.late}`}
        {line.correctedBy.length > 0 && ` · corrected by ${line.correctedBy.join(', ')}`}
      </small>
    </li>
  );
}
