// One balance: its plate, what it may be out by, its checks, and the weighings a failed one puts in doubt.
import { Ledger, type LedgerLine } from './parts/ledger.tsx';

interface Props {
  readonly id: string;
  readonly name: string;
  readonly facts: readonly (readonly [words: string, value: string])[];
  readonly errors: readonly { readonly load: string; readonly initial: string; readonly inService: string }[];
  readonly checks: readonly {
    readonly seq: number;
    readonly at: string;
    readonly result: 'pass' | 'warn' | 'fail';
    readonly words: string;
  }[];
  readonly lastGood: string | null;
  readonly failing: boolean;
  readonly doubted: readonly LedgerLine[];
  readonly caution: string | null;
}

const RESULTS = { pass: 'passed', warn: 'passed, over half of what is allowed', fail: 'failed' } as const;

export function BalanceView({ id, name, facts, errors, checks, lastGood, failing, doubted, caution }: Props) {
  return (
    <>
      <section class="head">
        <p class="soft">Balance</p>
        <h1>{name}</h1>
        {failing ? (
          <p class="again" role="alert">
            <b>It failed its last check.</b> What was weighed since {lastGood ?? 'it was first used'} is in doubt: weigh it again on another
            balance.
          </p>
        ) : (
          <p>{lastGood === null ? 'It was never checked with a certified weight.' : `Last check passed ${lastGood}.`}</p>
        )}
        <p class="act">
          <a class="button" href={`/balances/${id}/check`}>
            Daily check
          </a>
          <a href={`/balances/${id}/repeatability`}>Ten readings</a>
          <a href={`/write/balance_calibrated?balance=${id}`}>Calibration</a>
        </p>
      </section>
      <dl class="facts">
        {facts.map(([words, value]) => (
          <div>
            <dt>{words}</dt>
            <dd>{value}</dd>
          </div>
        ))}
      </dl>
      {doubted.length > 0 && (
        <section aria-labelledby="d">
          <h2 id="d">Weighings in doubt</h2>
          <Ledger lines={doubted} />
        </section>
      )}
      <div class="two">
        <Limits errors={errors} caution={caution} />
        <Checks checks={checks} />
      </div>
    </>
  );
}

function Limits({ errors, caution }: Pick<Props, 'errors' | 'caution'>) {
  return (
    <section aria-labelledby="p">
      <h2 id="p">What it may be out by</h2>
      <table class="limits">
        <thead>
          <tr>
            <th scope="col">At</th>
            <th scope="col">when verified</th>
            <th scope="col">in use</th>
          </tr>
        </thead>
        <tbody>
          {errors.map(({ load, initial, inService }) => (
            <tr>
              <th scope="row">{load}</th>
              <td>{initial}</td>
              <td>{inService}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {caution && <p class="soft">Usual caution: {caution}</p>}
    </section>
  );
}

function Checks({ checks }: Pick<Props, 'checks'>) {
  return (
    <section aria-labelledby="c">
      <h2 id="c">Checks</h2>
      <ol class="ledger">
        {checks.map(({ seq, at, result, words }) => (
          <li class={`check ${result}`}>
            <b>{RESULTS[result]}</b>
            <small>
              <a href={`/entries/${seq}`}>{seq}</a> · {at} · {words}
            </small>
          </li>
        ))}
      </ol>
    </section>
  );
}
