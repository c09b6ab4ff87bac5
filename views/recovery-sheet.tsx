// The sheet of paper that brings the signing seed back.
interface Sheet {
  readonly shop: string;
  readonly log: string;
  readonly seed: string;
  readonly vkey: string;
  readonly fingerprint: string;
}

export function RecoverySheet({ shop, log, seed, vkey, fingerprint }: Sheet) {
  return (
    <section class="head paper">
      <h1>Recovery sheet</h1>
      <p>
        Print this and lock it away from this machine. Whoever has the seed can sign as {shop}; without it and the files nobody can go on
        signing this ledger.
      </p>
      <dl class="facts">
        <div>
          <dt>Shop</dt>
          <dd>{shop}</dd>
        </div>
        <div>
          <dt>Ledger</dt>
          <dd>
            <code>{log}</code>
          </dd>
        </div>
        <div>
          <dt>Signing seed</dt>
          <dd>
            <code>{seed.match(/.{1,8}/g)?.join(' ')}</code>
          </dd>
        </div>
        <div>
          <dt>Public key</dt>
          <dd>
            <code>{vkey}</code>
          </dd>
        </div>
        <div>
          <dt>Its fingerprint, SHA-256</dt>
          <dd>
            <code>{fingerprint.match(/.{1,8}/g)?.join(' ')}</code>
          </dd>
        </div>
      </dl>
      <a class="button" href="/">
        It is printed: to the counter
      </a>
    </section>
  );
}
