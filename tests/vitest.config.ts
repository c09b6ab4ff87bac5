// How the tests run: two workers at most, real files in temporary folders, no globals.
import { defineConfig } from 'vitest/config';

export default defineConfig({
  oxc: { jsx: { runtime: 'automatic', importSource: 'hono/jsx' } },
  test: {
    include: ['tests/**/*.test.{ts,tsx}'],
    globalSetup: ['tests/build.ts'],
    maxWorkers: 2,
    testTimeout: 120_000,
    hookTimeout: 120_000,
    slowTestThreshold: 10_000,
  },
});
