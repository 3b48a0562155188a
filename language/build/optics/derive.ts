/**
 * Derives the shipped optical table from the measured files and writes it:
 *
 *     node language/build/optics/derive.ts [--from DIR] [--quick]
 *
 * DIR holds oil_films_measured.csv, okumura2005_ks.csv, film_over_four_grounds.csv and
 * films_over_four_grounds_reflectance.csv (what they are, where they are published and under which licence:
 * language/docs/colour.md); unless said it is shared/reference/optics beside the clone. `--quick` leaves the residuals of
 * class A as they are in the table, which spares leaving out every film.
 */
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { chartPigments } from './chart-pigments.ts';
import { readCharts } from './charts.ts';
import { leaveOneOut } from './evaluate.ts';
import { readFilms } from './films.ts';
import { fit } from './fit.ts';
import { kinPigments } from './kinship.ts';
import { filmMicrons, measuredPigments } from './measured.ts';
import { PAINTS } from './paints.ts';
import { rescaledPigments } from './rescaled.ts';
import { toSample } from './samples.ts';
import { tableText } from './table.ts';

const FILES = [
  'oil_films_measured.csv',
  'okumura2005_ks.csv',
  'film_over_four_grounds.csv',
  'films_over_four_grounds_reflectance.csv',
] as const;
const { values } = parseArgs({ options: { from: { type: 'string' }, quick: { type: 'boolean' } } });
const from = values.from ?? fileURLToPath(new URL('../../../../shared/reference/optics', import.meta.url));
const missing = FILES.filter((name) => !existsSync(join(from, name)));
if (missing.length > 0) {
  console.error(
    `The measured files are not part of the repository. Missing in ${values.from ?? 'shared/reference/optics beside the clone'}: ${missing.join(', ')}.\nSay where they are: node language/build/optics/derive.ts --from DIR. Where each is published: language/docs/colour.md. A new pigment needs none of them: npm run add-pigment.`,
  );
  process.exit(2);
}
const read = (name: (typeof FILES)[number]): string => readFileSync(join(from, name), 'utf8');
const target = new URL('../../src/optics/tables/pigments.json', import.meta.url);

const films = readFilms(read('oil_films_measured.csv'));
const whole = fit(films.map(toSample), PAINTS.length);
console.log(
  `${films.length} oil films, ${whole.steps} steps; they are about ${filmMicrons(whole).toFixed(0)} µm thick, dry`,
);
let measured = measuredPigments(films, whole, values.quick ? [] : leaveOneOut(films));
if (values.quick) {
  const before = new Map(
    (
      JSON.parse(readFileSync(target, 'utf8')) as { pigments: { id: string; residual: number }[] }
    ).pigments.map((p) => [p.id, p.residual]),
  );
  measured = measured.map((p) => ({ ...p, residual: before.get(p.id) ?? p.residual }));
}
const { pigments: rescaled, common } = rescaledPigments(read('okumura2005_ks.csv'), measured);
console.log(`acrylic to oil: common factor ${common.toFixed(2)}`);
const charts = chartPigments(
  readCharts(read('films_over_four_grounds_reflectance.csv')),
  read('film_over_four_grounds.csv'),
  [...measured, ...rescaled],
);
// A chart takes the place of the acrylic set where both have a pigment.
const known = [
  ...[...measured, ...rescaled].filter((p) => !charts.pigments.some((c) => c.id === p.id)),
  ...charts.pigments,
];
known.push(...kinPigments(known));
const text = tableText(known);
writeFileSync(target, text);
console.log(`${known.length} pigments, ${(text.length / 1024).toFixed(0)} KB`);
console.log(
  'Where figures changed, give the data its next number: node language/build/data-version.ts "what changed"',
);
