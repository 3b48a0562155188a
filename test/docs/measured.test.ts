/** The page of measurements belongs to this version of the tool and of its data. */
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { tool } from '../../language/src/study/tool.ts';

test('is of this version and tells its date and machine; else run: npm run bench -- --page', () => {
  const page = readFileSync(new URL('../../language/docs/measured.md', import.meta.url), 'utf8');
  expect(page).toContain(`${tool.name} ${tool.version}, data ${tool.data}.`);
  expect(page).toMatch(/on \d{4}-\d{2}-\d{2}; /);
  expect(page).toMatch(/^The machine: \d+ cores? .*Node v\d+/m);
  expect(page.match(/^## /gm)?.length).toBe(10);
});
