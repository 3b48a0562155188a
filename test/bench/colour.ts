/**
 * Figures of the colour room: how well held-out films are predicted, beside two baselines in the same run; how near
 * matching comes to an exhaustive search; and how fast it all is on one core.
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
import { flat } from '../../language/src/optics/wavelengths.ts';
import { everyRecipe, leastDifference, seeded } from '../optics/exhaustive.ts';
import { text } from '../optics/files.ts';
import { ms, quantile, type Table, times } from './table.ts';

/** Every mixture of the measured oil films predicted from the others. Errors are ΔE00 under D65, 2°. */
export function colourErrors(): Table {
  const films = readFilms(text('oil-films.csv'));
  const whole = fit(films.map(toSample), PAINTS.length);
  const heldOut = leaveOneOut(films, whole);
  const cell = (values: readonly number[]): string =>
    `${mean(values).toFixed(2)} (${median(values).toFixed(2)})`;
  const rows = GROUPS.map(([name, member]) => {
    const of = heldOut.filter((h) => member(h.film));
    const [strict, constant, average] = [
      of.flatMap((h) => h.strict),
      of.map((h) => h.singleConstant),
      of.map((h) => h.srgbAverage),
    ];
    return [
      name,
      times(mean(constant) / mean(strict)),
      times(mean(average) / mean(strict)),
      String(of.length),
      cell(strict),
      cell(of.flatMap((h) => h.thickness)),
      cell(of.flatMap((h) => h.own)),
      cell(constant),
      cell(average),
    ];
  });
  return {
    title: 'Colour of measured oil films, every mixture left out in turn',
    how: `ΔE00 (D65, 2°), mean and in brackets median. Strict: nothing read from the film; thickness: its thickness read from it; film: thickness and gloss read from it. The baselines, over white: one constant K/S for each paint, and the average of the sRGB values. The films come out ${filmMicrons(whole).toFixed(0)} µm thick, dry.`,
    head: [
      '',
      'one constant ÷ strict',
      'sRGB mean ÷ strict',
      'films',
      'strict',
      'thickness',
      'film',
      'one constant',
      'sRGB mean',
    ],
    rows,
  };
}

const paint = (id: string) => ({ name: id, pigments: [{ optical: opticalData(id)!, fraction: 0.35 }] });
const below = fromLab([90, 0, 5], GLOSS);
const targetsFrom = (random: () => number) => (): Lab => [
  15 + 75 * random(),
  -50 + 100 * random(),
  -50 + 120 * random(),
];

/** What whole parts found by `match` lose against trying every recipe. */
export function matchLosses(): Table {
  const random = seeded(7);
  const anywhere = targetsFrom(random);
  const seven = ['PW1', 'PY43', 'PR106', 'PB29', 'PBk9', 'PG18', 'PR83'].map(paint);
  const rows = [60, 10].map((thickness) => {
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
    return [
      `${thickness} µm`,
      `${(labs.length / 3 / 1e6).toFixed(2)} million`,
      mean(lost).toFixed(4),
      Math.max(...lost).toFixed(3),
      String(lost.filter((l) => l > 0.1).length),
    ];
  });
  return {
    title: 'Matching, against every recipe there is',
    how: '7 paints, up to 4 of them, whole parts 1 to 20; 200 seeded targets. ΔE00 lost against the best of all recipes.',
    head: ['film', 'recipes tried', 'mean loss', 'worst loss', 'targets over 0.1'],
    rows,
  };
}

function timed(name: string, runs: number, work: (i: number) => void): string[] {
  for (let i = 0; i < Math.min(runs, 50); i++) work(i);
  const taken = Array.from({ length: runs }, (_, i) => {
    const from = performance.now();
    work(i);
    return performance.now() - from;
  });
  return [name, ms(quantile(taken, 0.5)), ms(quantile(taken, 0.95))];
}

export function colourSpeed(): Table {
  const stack = Array.from({ length: 50 }, (_, i) => ({
    pigments: ['PB29', 'PG18', 'PW1'].map((id, j) => ({
      optical: opticalData(id)!,
      fraction: 0.05 + 0.02 * ((i + j) % 5),
    })),
    thickness: 8 + (i % 7),
  }));
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
  const targets = Array.from({ length: 60 }, targetsFrom(seeded(11)));
  const [kx, sx, r] = [flat(0.3), flat(0.7), flat(0.5)];
  return {
    title: 'Colour, time on one core',
    how: 'Warm, the same work again and again.',
    head: ['work', 'p50', 'p95'],
    rows: [
      timed('1,000 layers of one film', 200, () => {
        for (let i = 0; i < 1000; i++) filmOver(kx, sx, r);
      }),
      timed('50 layers of 3 pigments to a colour', 500, () => void toColour(layAll(stack, below), GLOSS)),
      timed(
        'match, 12 paints, up to 4',
        60,
        (i) => void match({ target: targets[i]!, paints: twelve, thickness: 60, below, face: GLOSS }),
      ),
    ],
  };
}
