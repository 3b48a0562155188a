/** `npm run test:long`: the tests that try a sample in `npm test` (those that import long.ts) try everything. */
import { defineConfig } from 'vitest/config';
import { testFiles } from './files.ts';
import { every } from './vitest.config.ts';

export default defineConfig({
  root: new URL('..', import.meta.url).pathname,
  test: {
    ...every,
    include: testFiles((text) => /from '[./]+\/long\.ts'/.test(text)),
    testTimeout: 900_000,
    env: { PAINTPLAN_TEST_LONG: '1' },
  },
});
