/** Paintings too large to be drawn beside their text: what is left out is said, and the whole report still has it. */
import { expect, test } from 'vitest';
import { createAnalyser } from '../../language/src/analyse.ts';
import { buildReport } from '../../language/src/report/build.ts';
import { BESIDE_TEXT } from '../../language/src/report/extent.ts';
import { bodyMarkup, htmlReport } from '../../language/src/report/html.ts';
import { sectionDrawing } from '../../language/src/report/section.ts';
import { areasAndLayers, emptyLayers } from '../bench/texts.ts';

const MOST = 3_000_000;
const studied = (text: string) => createAnalyser()(text, 'file:///heavy.paintplan').study;
const count = (text: string, what: string) => text.split(what).length - 1;

test('300 areas under 300 glazes', () => {
  const report = buildReport(studied(areasAndLayers(300, 300)), [], () => '', BESIDE_TEXT);
  const body = bodyMarkup(report);
  expect(Buffer.byteLength(body)).toBeLessThan(MOST);
  expect(body).toContain(
    'Drawn: the first 12 of 300 areas, of an area the upper 30 layers (there are up to 301). ‘paintplan report PLAN’ writes the report with all of it.',
  );
  expect(body).toContain(
    '288 more areas are left out here. ‘paintplan report PLAN’ writes the report with all of it.',
  );
  // as many rows as are shown and as are said to be left out
  const colours = body.slice(body.indexOf('id="colours"'), body.indexOf('id="calendar"'));
  const left = Array.from(colours.matchAll(/(\d+) of 301 rows are left out here\./g), ([, n]) => Number(n));
  expect(left).toHaveLength(12);
  expect(count(colours, '<tr>') - 12 + left.reduce((sum, n) => sum + n, 0)).toBe(12 * 301);
  const section = body.slice(body.indexOf('id="section-title"'), body.indexOf('id="strips-title"'));
  expect(count(section, '<rect')).toBe(12 * 30);
  expect(count(section, '271 layers beneath not drawn')).toBe(12);
});

test('a painting of the usual size is drawn whole', () => {
  const study = studied(areasAndLayers(4, 12));
  const whole = buildReport(study, [], () => '');
  const beside = buildReport(study, [], () => '', BESIDE_TEXT);
  expect(bodyMarkup(beside)).toBe(bodyMarkup(whole));
  expect(htmlReport(whole)).not.toContain('left out here');
});

test('50,000 layers, the section whole and the rest beside the text', { timeout: 240_000 }, () => {
  const study = studied(emptyLayers(50_000));
  expect(count(sectionDrawing(study)?.markup ?? '', '<rect')).toBe(50_000);
  const body = bodyMarkup(buildReport(study, [], () => '', BESIDE_TEXT));
  expect(Buffer.byteLength(body)).toBeLessThan(MOST);
  expect(body).toContain('of an area the upper 30 layers (there are up to 50000)');
});
