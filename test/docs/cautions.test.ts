/** The page of cautions says what the tool says, and says all of it. */
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { CAUTIONS_PAGE, filled } from '../../language/build/cautions-page.ts';
import { allPigments } from '../../language/src/materials/catalogue.ts';
import { allCautions, deferringLine } from '../../language/src/materials/cautions.ts';

const page = readFileSync(CAUTIONS_PAGE, 'utf8');

test('language/docs/cautions.md is current: else run node language/build/cautions-page.ts', () => {
  expect(page).toBe(filled(page));
});

test('it defers before it says anything else', () => {
  expect(page.indexOf(deferringLine.text)).toBeGreaterThan(0);
  expect(page.indexOf(deferringLine.text)).toBeLessThan(page.indexOf('## '));
});

test('every caution of the tool stands on it, once, in its own words', () => {
  for (const { title, text } of allCautions()) {
    expect(page.split(text).length, title).toBe(2);
    expect(page, title).toContain(`**${title}.** ${text}`);
  }
});

test('every pigment that brings a hazard is named', () => {
  for (const { id, hazards } of allPigments()) if (hazards.length > 0) expect(page).toContain(`\`${id}\``);
});

// ACGIH: 20 ppm (Haz-Map); NIOSH Pocket Guide to Chemical Hazards, turpentine: 100 ppm (560 mg/m3), flash point 95 °F.
test('the table of solvents agrees with the published guide', () => {
  const [, day, quarter, flash, , others] =
    /\| turpentine \| ([^|]*) \| ([^|]*) \| ([^|]*) \| ([^|]*) \| ([^|]*) \|/.exec(page) ?? [];
  expect(day).toBe('20 ppm');
  expect(others).toContain('NIOSH 100 ppm = 560 mg/m³');
  expect(quarter).toBe('–');
  expect(Number.parseFloat(flash ?? '')).toBeCloseTo((95 - 32) / 1.8, 5);
});

test('everyday things are not forgotten', () => {
  for (const heading of [
    'Rags',
    'Solvents and the air',
    'Pigments that are poison',
    'Dust and dry pigments',
    'Cutting and abrading',
    'Spraying',
    'Hands, food, children, pregnancy',
    'Storage and waste',
    'Old paintings',
    'What the tool does not see',
  ])
    expect(page).toContain(`\n## ${heading}\n`);
});
