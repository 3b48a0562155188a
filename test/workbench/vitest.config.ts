import { defineConfig } from 'vitest/config';

// One step after another, one window at a time: a workbench wants the machine for itself.
export default defineConfig({
  root: new URL('../..', import.meta.url).pathname,
  test: {
    include: ['test/workbench/steps/*.test.ts'],
    globalSetup: ['test/workbench/setup.ts'],
    testTimeout: 180_000,
    hookTimeout: 180_000,
    pool: 'forks',
    fileParallelism: false,
    reporters: ['verbose'],
  },
});
