// StrykerJS for one group of files: `run.mjs` says which by MUTATE_NAME, MUTATE_FILES and MUTATE_TESTS.
const { MUTATE_NAME: name = 'all', MUTATE_FILES: files = 'src/**/*.ts' } = process.env;

export default {
  packageManager: 'npm',
  plugins: ['@stryker-mutator/vitest-runner'],
  testRunner: 'vitest',
  vitest: { configFile: 'tests/mutation/vitest.config.ts', related: false },
  mutate: files.split(' '),
  // Words are compared by code, not by letter, so another sentence is no fault.
  mutator: { excludedMutations: ['StringLiteral'] },
  // A mutant outside every function is on before any test begins, so that each would need a process of its own.
  ignoreStatic: true,
  // The compiler has no JavaScript interface any more; a file that is not there is left alone.
  tsconfigFile: 'tests/mutation/no-tsconfig.json',
  ignorePatterns: ['dist', 'data', 'data-demo', '.build-*', '.stryker', 'tests/browser', 'tests/bench'],
  tempDirName: '.stryker/sandbox',
  concurrency: Number(process.env.MUTATE_WORKERS ?? 1),
  incremental: true,
  incrementalFile: `.stryker/${name}.incremental.json`,
  reporters: ['json', 'progress-append-only'],
  jsonReporter: { fileName: `.stryker/${name}.json` },
  timeoutMS: 5_000,
  timeoutFactor: 2,
  allowEmpty: true,
};
