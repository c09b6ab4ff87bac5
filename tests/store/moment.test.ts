// One moment: while somebody writes, a check finds nothing wrong, an export can be imported, and what is read together belongs together.
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { exportLines, importLines } from '../../src/store/transfer.ts';
import { line, openShop, type Shop } from '../shop.ts';

let shop: Shop;
let written: number;
let writing: Promise<void>;
let stop: () => void;
beforeEach(async () => {
  shop = await openShop();
  const job = shop.newRef('job');
  await shop.write(line('job_opened', { job, bag: shop.newBag(), broughtBy: 'customer', owner: 'customer', channel: 'counter' }));
  let stopped = false;
  written = 0;
  stop = () => {
    stopped = true;
  };
  const write = async () => {
    while (!stopped) {
      const id = `meanwhile-${written}`;
      const lines = [line('note_added', { about: job, text: `Note ${written}` }), line('note_added', { about: job, text: 'and another' })];
      const answer = await shop.store.record({ id, by: shop.owner, auth: 'session', device: 'test', seen: {}, lines });
      if (answer.answer !== 'written') throw new Error(JSON.stringify(answer));
      written++;
    }
  };
  writing = write();
});
afterEach(async () => {
  stop();
  await writing;
  await shop.close();
});

describe('while somebody writes', () => {
  it('fifty checks find nothing wrong', async () => {
    const found = [];
    const before = written;
    for (let n = 0; n < 50; n++) found.push(await shop.store.check());
    expect(found.filter((one) => 'bad' in one)).toEqual([]);
    expect(written).toBeGreaterThan(before + 10);
  });

  it('twenty exports are whole', async () => {
    const sizes = new Set<number>();
    for (let n = 0; n < 20; n++) {
      const lines: string[] = [];
      await shop.store.snapshot(async (read) => {
        for await (const one of exportLines(read, shop.store.log)) lines.push(one);
      });
      const other = await openShop({ started: false, seed: 100 + n });
      sizes.add(await importLines(other.store.file, other.store.keys, each(lines)));
      await other.close();
    }
    expect(sizes.size).toBeGreaterThan(5);
  });

  it('what one snapshot reads is of one moment, within it and beside it', async () => {
    const count = 'SELECT COUNT(*) AS n FROM entry';
    await shop.store.snapshot(async (read) => {
      const [first] = await read(count);
      const from = written;
      while (written < from + 5) await new Promise((resolve) => setImmediate(resolve));
      expect(await read(count)).toEqual([first]);
      expect(await shop.store.read(count)).toEqual([first]);
      expect((await shop.store.issueCheckpoint()).size).toBe(first?.n);
    });
    const [later] = await shop.store.read(count);
    expect(Number(later?.n)).toBeGreaterThan(10);
  });
});

async function* each(all: readonly string[]) {
  yield* all;
}
