/** What is written from the rules is current: their index, and the page that says what they say. */
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { rulesIndex } from '../../language/build/rules-index.ts';
import { rulesPage } from '../../language/build/rules-page.ts';
import { rules } from '../../language/src/rules/index.ts';

const page = readFileSync(new URL('../../language/docs/rules.md', import.meta.url), 'utf8');

test('language/docs/rules.md is current: else run node language/build/rules-page.ts', () => {
  expect(page).toBe(rulesPage());
});

test('language/src/rules/index.ts is current: else run node language/build/rules-index.ts', () => {
  expect(readFileSync(new URL('../../language/src/rules/index.ts', import.meta.url), 'utf8')).toBe(
    rulesIndex(),
  );
});

test('every rule has its heading, once', () => {
  const headings = [...page.matchAll(/^### (.+)$/gm)].map((m) => m[1]);
  expect(headings.sort()).toEqual(rules.map((r) => r.id).sort());
});
