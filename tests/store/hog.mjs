// Another program that takes the write lock of a file in bursts of 150 ms: node hog.mjs <path>. Ends with its standard input.
import { createClient } from '@libsql/client';

const client = createClient({ url: `file:${process.argv[2]}`, concurrency: 1 });
const pause = (ms) => new Promise((resolve) => setTimeout(resolve, ms));
process.stdin.on('end', () => process.exit(0)).resume();
for (let burst = 0; ; burst++) {
  try {
    const held = await client.transaction('write');
    process.stdout.write('held\n');
    await pause(150);
    await held.rollback();
  } catch {
    await client.reconnect();
  }
  await pause(20 + (burst % 5) * 20);
}
