/**
 * Figures of the colour room, printed: how well held-out films are predicted, beside two baselines in the same run; how
 * near matching comes to an exhaustive search; and how fast it all is on one core.
 *
 *     npm run bench:colour
 */

import { GROUPS, leaveOneOut, mean, median } from '../../language/build/optics/evaluate.ts';
import { readFilms } from '../../language/build/optics/films.ts';
import { fit } from '../../language/build/optics/fit.ts';
import { filmMicrons } from '../../language/build/optics/measured.ts';
import { PAINTS } from '../../language/build/optics/paints.ts';
import { toSample } from '../../language/build/optics/samples.ts';
import type { Lab } from '../../language/src/optics/cie.ts';
import { opticalData } from '../../language/src/optics/data.ts';
import { filmOver } from '../../language/src/optics/film.ts';
import { match } from '../../language/src/optics/match.ts';
import { fromLab } from '../../language/src/optics/spectrum.ts';
import { layAll, toColour } from '../../language/src/optics/stack.ts';
import { GLOSS } from '../../language/src/optics/surface.ts';
import { BANDS, flat } from '../../language/src/optics/wavelengths.ts';
import { everyRecipe, leastDifference, seeded } from '../optics/exhaustive.ts';
import { text } from '../optics/files.ts';

const row = (...cells: (string | number)[]): void =>
  console.log(cells.map((c, i) => (i === 0 ? String(c).padEnd(44) : String(c).padStart(13))).join(''));

console.log(
  'Measured oil films, every mixture left out in turn: ΔE00 (D65/2°), mean (median), over white and over black\n',
);
const films = readFilms(text('oil-films.csv'));
const whole = fit(films.map(toSample), PAINTS.length);
const heldOut = leaveOneOut(films, whole);
row('', 'films', 'strict', 'thickness', 'film', 'one constant', 'sRGB mean');
for (const [name, member] of GROUPS) {
  const of = heldOut.filter((h) => member(h.film));
  const cell = (values: readonly number[]): string =>
    `${mean(values).toFixed(2)} (${median(values).toFixed(2)})`;
  row(
    name,
    of.length,
    cell(of.flatMap((h) => h.strict)),
    cell(of.flatMap((h) => h.thickness)),
    cell(of.flatMap((h) => h.own)),
    cell(of.map((h) => h.singleConstant)),
    cell(of.map((h) => h.srgbAverage)),
  );
}
console.log(`
strict: nothing read from the film. thickness: its thickness read from it. film: thickness and gloss read from it.
The baselines are over white. The films come out ${filmMicrons(whole).toFixed(0)} µm thick, dry.
`);

const paint = (id: string) => ({ name: id, pigments: [{ optical: opticalData(id)!, fraction: 0.35 }] });
const below = fromLab([90, 0, 5], GLOSS);
const random = seeded(7);
const anywhere = (): Lab => [15 + 75 * random(), -50 + 100 * random(), -50 + 120 * random()];

console.log(
  'Matching against an exhaustive search: 7 paints, up to 4, every recipe in whole parts 1 to 20; 200 seeded targets',
);
const seven = ['PW1', 'PY43', 'PR106', 'PB29', 'PBk9', 'PG18', 'PR83'].map(paint);
for (const thickness of [60, 10]) {
  const labs = everyRecipe(seven, thickness, below, GLOSS, 4);
  const lost = Array.from({ length: 200 }, (_, i) => {
    const j = 3 * Math.floor((random() * labs.length) / 3);
    const near = (v: number): number => v + 2 * (random() - 0.5);
    const target: Lab = i % 2 ? [near(labs[j]!), near(labs[j + 1]!), near(labs[j + 2]!)] : anywhere();
    return (
      match({ target, paints: seven, thickness, below, face: GLOSS }).recipes[0]!.deltaE00 -
      leastDifference(labs, target)
    );
  });
  row(
    `${thickness} µm, ${labs.length / 3} recipes`,
    `worst ${Math.max(...lost).toFixed(3)}`,
    `mean ${mean(lost).toFixed(4)}`,
    `over 0.1: ${lost.filter((l) => l > 0.1).length}`,
  );
}

const timed = (name: string, unit: string, runs: number, work: (i: number) => void, per = 1): void => {
  for (let i = 0; i < Math.min(runs, 50); i++) work(i);
  const times: number[] = [];
  for (let i = 0; i < runs; i++) {
    const from = performance.now();
    work(i);
    times.push((performance.now() - from) / per);
  }
  times.sort((a, b) => a - b);
  row(name, `p50 ${times[runs >> 1]!.toFixed(3)}`, `p95 ${times[Math.floor(runs * 0.95)]!.toFixed(3)}`, unit);
};

console.log('\nSpeed, one core');
{
  const [kx, sx, r] = [flat(0.3), flat(0.7), flat(0.5)];
  const layers = 200_000;
  for (let i = 0; i < layers; i++) filmOver(kx, sx, r);
  const from = performance.now();
  for (let i = 0; i < layers; i++) filmOver(kx, sx, r);
  row(
    'layers × bands per second',
    `${((layers * BANDS) / (performance.now() - from) / 1000).toFixed(1)} million`,
  );
}
const stack = Array.from({ length: 50 }, (_, i) => ({
  pigments: ['PB29', 'PG18', 'PW1'].map((id, j) => ({
    optical: opticalData(id)!,
    fraction: 0.05 + 0.02 * ((i + j) % 5),
  })),
  thickness: 8 + (i % 7),
}));
timed('50 layers of 3 pigments to a colour', 'ms', 500, () => void toColour(layAll(stack, below), GLOSS));
const twelve = [
  'PW1',
  'PY43',
  'PY35',
  'PR106',
  'PR101',
  'PR83',
  'PB29',
  'PB27',
  'PG18',
  'PBr7 burnt-umber',
  'PBk9',
  'PBr7 raw-sienna',
].map(paint);
const targets = Array.from({ length: 60 }, anywhere);
timed(
  'match, 12 paints, up to 4',
  'ms',
  60,
  (i) => void match({ target: targets[i]!, paints: twelve, thickness: 60, below, face: GLOSS }),
);
