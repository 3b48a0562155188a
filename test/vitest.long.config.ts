/** `npm run test:long`: the tests that try a sample in `npm test` (those that import long.ts) try everything. */
import { readdirSync, readFileSync } from 'node:fs';
import { defineConfig } from 'vitest/config';
import usual from './vitest.config.ts';

const folder = new URL('.', import.meta.url);
const samples = (file: string): boolean =>
  file.endsWith('.test.ts') && /from '[./]+\/long\.ts'/.test(readFileSync(new URL(file, folder), 'utf8'));

export default defineConfig({
  ...usual,
  test: {
    ...usual.test,
    include: readdirSync(folder, { recursive: true, encoding: 'utf8' })
      .map((file) => file.replaceAll('\\', '/'))
      .filter(samples)
      .map((file) => `test/${file}`),
    testTimeout: 900_000,
    env: { PAINTPLAN_TEST_LONG: '1' },
  },
});
