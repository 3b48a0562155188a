/** The page of the language says what the lists of words say. */
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { filled, LANGUAGE_PAGE } from '../../language/build/language-page.ts';
import { declarationWords, fieldsOf, WORDED } from '../../language/src/syntax/words.ts';

const page = readFileSync(LANGUAGE_PAGE, 'utf8');

test('language/docs/language.md is current: else run node language/build/language-page.ts', () => {
  expect(page).toBe(filled(page));
});

test('every word has its row', () => {
  for (const { word } of [...declarationWords, ...WORDED.flatMap(fieldsOf)])
    expect(page).toContain(`| \`${word}\``);
});
