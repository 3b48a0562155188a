import { defineConfig } from 'vitest/config';
import { testFiles } from './files.ts';

/** Rooms whose tests call functions and look at what comes back. */
const PURE =
  /^(drying|film|materials|optics|permanence|plan|plans|features|report|rules|studio|study|syntax)\//;

/** They run in one process, which loads the rooms once; not so a test that puts something else in a module's place. */
const shared = testFiles((text, path) => PURE.test(path) && !/\bvi\.|\bprocess\.env\b/.test(text));

/** What holds of every test, here and in the long run. */
export const every = {
  testTimeout: 60_000,
  pool: 'forks',
  // the process that hands out the files hardly works, so every core has one that tests
  maxWorkers: '100%',
} as const;

export default defineConfig({
  root: new URL('..', import.meta.url).pathname,
  test: {
    ...every,
    projects: [
      {
        extends: true,
        test: {
          name: 'alone',
          include: ['test/**/*.test.ts'],
          // test/workbench wants a workbench of its own: npm run test:workbench
          exclude: ['test/workbench/**', ...shared],
        },
      },
      { extends: true, test: { name: 'shared', include: shared, isolate: false } },
    ],
  },
});
