// Vitest for mutation runs: in one process, the files of the group, shared modules.
import { defineConfig } from 'vitest/config';

export default defineConfig({
  oxc: { jsx: { runtime: 'automatic', importSource: 'hono/jsx' } },
  test: {
    include: (process.env.MUTATE_TESTS ?? 'tests/**/*.test.{ts,tsx}').split(' '),
    // These read the source as text or start the built program or a browser: no mutant can be switched on inside them.
    exclude: [
      'tests/browser/**',
      'tests/tidy.test.ts',
      'tests/entries/source.test.ts',
      'tests/units/mass-units.test.ts',
      'tests/web/process.test.ts',
      'tests/store/kill.test.ts',
      'tests/simulation/**',
      // Thousands of simulated jobs, or a shop of years, for each change: with every call counted it does not end.
      'tests/reckoning/alarm-rates.test.ts',
      'tests/reckoning/large-network.test.ts',
      '**/node_modules/**',
    ],
    isolate: false,
    setupFiles: ['tests/mutation/setup.ts'],
    testTimeout: 120_000,
    hookTimeout: 120_000,
  },
});
