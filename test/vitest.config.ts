import { defineConfig } from 'vitest/config';

export default defineConfig({
  root: new URL('..', import.meta.url).pathname,
  test: {
    include: ['test/**/*.test.ts'],
    // wants a workbench of its own: npm run test:workbench
    exclude: ['test/workbench/**'],
    testTimeout: 60_000,
    pool: 'forks',
    // the process that hands out the files hardly works, so every core has one that tests
    maxWorkers: '100%',
  },
});
