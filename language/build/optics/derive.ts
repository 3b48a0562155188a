/**
 * Derives the shipped optical table from the measured files and writes it:
 *
 *     node language/build/optics/derive.ts [--from DIR] [--quick]
 *
 * DIR holds oil_films_measured.csv, okumura2005_ks.csv, film_over_four_grounds.csv and
 * films_over_four_grounds_reflectance.csv (what they are, where they are published and under which licence:
 * language/docs/colour.md); unless said it is shared/reference/optics beside the clone. What judged the data goes into
 * judged.json, from which the page is printed. `--quick` leaves that and the residuals of class A as they are, which
 * spares leaving out every film.
 */
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { chartPigments } from './chart-pigments.ts';
import { readCharts } from './charts.ts';
import { classOffs } from './class-offs.ts';
import { coverage, groups, leaveOneOut } from './evaluate.ts';
import { readFilms } from './films.ts';
import { fit } from './fit.ts';
import { type Judged, judgedClass } from './judged.ts';
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
const left = values.quick ? [] : leaveOneOut(films);
let measured = measuredPigments(films, whole, left);
if (values.quick) {
  const before = new Map(
    (
      JSON.parse(readFileSync(target, 'utf8')) as { pigments: { id: string; residual: number }[] }
    ).pigments.map((p) => [p.id, p.residual]),
  );
  measured = measured.map((p) => ({ ...p, residual: before.get(p.id) ?? p.residual }));
}
const { pigments: rescaled, common, tints } = rescaledPigments(read('okumura2005_ks.csv'), measured);
console.log(`acrylic to oil: common factor ${common.toFixed(2)}`);
const charts = readCharts(read('films_over_four_grounds_reflectance.csv'));
const { pigments: charted, heldOut } = chartPigments(
  charts,
  read('film_over_four_grounds.csv'),
  [...measured, ...rescaled],
  tints,
);
// A chart takes the place of the acrylic set where both have a pigment.
const measuredOrCharted = [
  ...[...measured, ...rescaled].filter((p) => !charted.some((c) => c.id === p.id)),
  ...charted,
];
const offs = classOffs(charts, rescaled, measuredOrCharted);
const known = measuredOrCharted.map((p) =>
  // The white is what the set is measured against: it has no hue to be wrong in.
  p.class === 'B' ? { ...p, residual: Math.hypot(p.residual, p.id === 'PW6' ? 2 : offs.acrylic(p.id)) } : p,
);
known.push(...kinPigments(known, offs.kin));
const text = tableText(known);
writeFileSync(target, text);
if (!values.quick) {
  const judged: Judged = {
    oilFilms: films.length,
    microns: filmMicrons(whole),
    common,
    groups: groups(left),
    coverage: coverage(left),
    classes: [
      judgedClass('B', 'chart films, predicted from the acrylic set', offs.judged.B),
      judgedClass(
        'C',
        'chart films of one sort, predicted from the other sorts',
        [...heldOut.values()].flat(),
      ),
      judgedClass('D', 'chart films, predicted from a relative of their pigment', offs.judged.D),
    ],
  };
  writeFileSync(new URL('judged.json', import.meta.url), `${JSON.stringify(judged, undefined, 1)}\n`);
}
console.log(`${known.length} pigments, ${(text.length / 1024).toFixed(0)} KB`);
console.log('Then the page: node language/build/colour-page.ts');
console.log(
  'Where figures changed, give the data its next number: node language/build/data-version.ts "what changed"',
);
