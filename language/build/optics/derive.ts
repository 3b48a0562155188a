/**
 * Derives the shipped optical table from the measured files and writes it:
 *
 *     node language/build/optics/derive.ts --from DIR
 *
 * DIR holds oil_films_measured.csv, okumura2005_ks.csv and film_over_four_grounds.csv (columns: language/docs/colour.md).
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { GROUPS, leaveOneOut, mean, median } from './evaluate.ts';
import { readFilms } from './films.ts';
import { fit } from './fit.ts';
import { fourGroundsPigments } from './four-grounds.ts';
import { kinPigments } from './kinship.ts';
import { filmMicrons, measuredPigments } from './measured.ts';
import { PAINTS } from './paints.ts';
import { rescaledPigments } from './rescaled.ts';
import { toSample } from './samples.ts';
import { tableText } from './table.ts';

const { values } = parseArgs({ options: { from: { type: 'string' } } });
if (!values.from) {
  console.error('Say where the measured files are: node language/build/optics/derive.ts --from DIR');
  process.exit(2);
}
const read = (name: string): string => readFileSync(join(values.from!, name), 'utf8');

const films = readFilms(read('oil_films_measured.csv'));
const whole = fit(films.map(toSample), PAINTS.length);
const heldOut = leaveOneOut(films, whole);
for (const [name, member] of GROUPS) {
  const of = heldOut.filter((h) => member(h.film));
  const line = (key: 'strict' | 'thickness' | 'own') =>
    `${key} ${mean(of.flatMap((h) => h[key])).toFixed(2)} (median ${median(of.flatMap((h) => h[key])).toFixed(2)})`;
  console.log(
    `${name}: ${of.length} films, ΔE00 ${(['strict', 'thickness', 'own'] as const).map(line).join(', ')}`,
  );
}
console.log(`the measured films are about ${filmMicrons(whole).toFixed(0)} µm thick, dry`);

const measured = measuredPigments(films, whole, heldOut);
const { pigments: rescaled, common } = rescaledPigments(read('okumura2005_ks.csv'), measured);
console.log(`acrylic to oil: common factor ${common.toFixed(2)}`);
const known = [...measured, ...rescaled];
known.push(...fourGroundsPigments(read('film_over_four_grounds.csv'), known));
known.push(...kinPigments(known));
const target = new URL('../../src/optics/tables/pigments.json', import.meta.url);
const text = tableText(known);
writeFileSync(target, text);
console.log(`${known.length} pigments, ${(text.length / 1024).toFixed(0)} KB`);
console.log(
  'Where figures changed, give the data its next number: node language/build/data-version.ts "what changed"',
);
