// Mutates the source group by group and says how many changes the tests noticed: `npm run mutate -- [group or file …]`, `-- summary` for the last results alone.
import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync } from 'node:fs';

/** Which files are changed, and which tests must notice: the closest ones, so that a run ends. */
const GROUPS = {
  log: { files: ['src/log/*.ts'], tests: ['tests/log/*.test.ts', 'tests/vectors/*.test.ts', 'tests/attacks/log.test.ts'] },
  units: { files: ['src/units/*.ts'], tests: ['tests/units/*.test.ts'] },
  weighing: { files: ['src/weighing/*.ts'], tests: ['tests/weighing/*.test.ts', 'tests/units/*.test.ts'] },
  ledger: {
    files: ['src/ledger/*.ts'],
    tests: ['tests/ledger/*.test.ts', 'tests/entries/*.test.ts', 'tests/invariants/corrections.test.ts'],
  },
  entries: { files: ['src/entries/*.ts'], tests: ['tests/entries/*.test.ts'] },
  book: { files: ['src/book/*.ts'], tests: ['tests/book/*.test.ts', 'tests/entries/*.test.ts'] },
  reckoning: { files: ['src/reckoning/*.ts'], tests: ['tests/reckoning/*.test.ts', 'tests/reference/reference.test.ts'] },
  access: {
    files: ['src/store/access.ts', 'src/store/tries.ts', 'src/store/sessions.ts'],
    tests: ['tests/store/access.test.ts', 'tests/web/sessions.test.ts'],
  },
};

const groupOf = (file) => {
  const name = GROUPS.access.files.includes(file) ? 'access' : file.split('/')[1];
  if (!Object.hasOwn(GROUPS, name)) throw new Error(`${file} is in no group: ${Object.keys(GROUPS).join(', ')}`);
  return name;
};
const resultsOf = (name) => `.stryker/${name}.incremental.json`;

function mutate(name, files) {
  const env = { ...process.env, MUTATE_NAME: name, MUTATE_FILES: files.join(' '), MUTATE_TESTS: GROUPS[name].tests.join(' ') };
  const { status } = spawnSync('npx', ['stryker', 'run', 'tests/mutation/stryker.config.mjs'], { env, stdio: 'inherit' });
  if (status !== 0) process.exitCode = 1;
}

/** Killed among those that could run, for each file and the whole group; then where the survivors are. */
function summary(name) {
  if (!existsSync(resultsOf(name))) return;
  const { files } = JSON.parse(readFileSync(resultsOf(name), 'utf8'));
  const survivors = [];
  const sum = { killed: 0, valid: 0 };
  const say = (what, { killed, valid }) => console.log(`${what.padEnd(40)} ${killed}/${valid} ${((100 * killed) / valid).toFixed(1)} %`);
  for (const [file, { mutants, source }] of Object.entries(files)) {
    const of = (...statuses) => mutants.filter(({ status }) => statuses.includes(status));
    const killed = of('Killed', 'Timeout').length;
    const alive = of('Survived', 'NoCoverage');
    if (killed + alive.length === 0) continue;
    sum.killed += killed;
    sum.valid += killed + alive.length;
    say(`  ${file}`, { killed, valid: killed + alive.length });
    const lines = source.split('\n');
    for (const { location, mutatorName, replacement } of alive)
      survivors.push(
        `  ${file}:${location.start.line}:${location.start.column} ${mutatorName} → ${replacement}\n      ${lines[location.start.line - 1].trim()}`,
      );
  }
  if (sum.valid > 0) say(name, sum);
  if (process.env.MUTATE_SURVIVORS) console.log(survivors.join('\n'));
}

mkdirSync('.stryker', { recursive: true });
const asked = process.argv.slice(2);
const onlySummary = asked[0] === 'summary';
const wanted = onlySummary ? asked.slice(1) : asked;
const runs = new Map();
for (const one of wanted.length > 0 ? wanted : Object.keys(GROUPS)) {
  const name = Object.hasOwn(GROUPS, one) ? one : groupOf(one);
  runs.set(name, [...(runs.get(name) ?? []), ...(name === one ? GROUPS[one].files : [one])]);
}
for (const [name, files] of runs) {
  if (!onlySummary) mutate(name, files);
  summary(name);
}
