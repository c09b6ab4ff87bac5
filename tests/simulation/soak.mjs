// `npm run soak -- [how many shops] [first seed]`: simulated shops for as long as one likes, 100,000 unless told otherwise.
import { spawnSync } from 'node:child_process';

const [count = '100000', first = '1'] = process.argv.slice(2);
const args = ['vitest', 'run', '--config', 'tests/vitest.config.ts', '--root', '.', 'tests/simulation', '--reporter=dot'];
const { status } = spawnSync('npx', args, { env: { ...process.env, LEMEL_SEEDS: count, LEMEL_SEED: first }, stdio: 'inherit' });
process.exit(status ?? 1);
