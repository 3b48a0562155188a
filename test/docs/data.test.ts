/** The page of the data says what the data say, and their sources are fit to be read. */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { DATA_PAGE, filled, sources } from '../../language/build/data-page.ts';
import { WORKS } from '../../language/build/works.ts';
import { dataRecord } from '../../language/src/materials/catalogue.ts';

const page = readFileSync(DATA_PAGE, 'utf8');

test('language/docs/data.md is current: else run node language/build/data-page.ts', () => {
  expect(page).toBe(filled(page));
});

test('every licence of the data is told, with what it asks for', () => {
  for (const { from, licence } of dataRecord.attributions) {
    const telling = /doi [^\s;]+|Heritage Science|Okumura/.exec(from)?.[0].replace('doi ', 'doi.org/');
    expect(page, from).toContain(telling);
    if (/^CC/.test(licence)) expect(page, licence).toContain(licence);
  }
  expect(page).toContain('https://creativecommons.org/licenses/by/4.0/');
});

describe('source texts', () => {
  const texts = Object.entries(sources);

  test('are references, not notes to self', () => {
    for (const [id, [text]] of texts) {
      expect(text, id).not.toMatch(
        /Gutenberg text|cleanventory|github|tema[ =]|\bID\b|\blines? \d| \| |page_id|oldid|\(rev\.|\(diff|search excerpt|\bum\b|'/i,
      );
      expect(text.length, text).toBeLessThan(320);
      expect(text).toBe(text.trim());
    }
  });

  test('what was read somewhere names a work that the page lists', () => {
    for (const [id, [text, mark]] of texts)
      if (mark === 'published' || mark === 'second-hand')
        expect(
          WORKS.some((w) => w.named.test(text)),
          `${id}: ${text}`,
        ).toBe(true);
  });

  test('every work listed is named by a source', () => {
    for (const { named, reference } of WORKS)
      expect(
        texts.some(([, [text]]) => named.test(text)),
        reference,
      ).toBe(true);
  });
});
