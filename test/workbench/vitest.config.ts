import { defineConfig } from 'vitest/config';

// Two windows at a time: more would keep one another waiting on a small machine.
export default defineConfig({
  root: new URL('../..', import.meta.url).pathname,
  test: {
    include: ['test/workbench/steps/*.test.ts'],
    globalSetup: ['test/workbench/setup.ts'],
    testTimeout: 180_000,
    hookTimeout: 180_000,
    pool: 'forks',
    maxWorkers: 2,
    reporters: ['verbose'],
  },
});
