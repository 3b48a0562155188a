/**
 * Figures of the colour room: how near light in films comes to full radiative transfer; how well held-out films are
 * predicted, beside Kubelka and Munk's model and two baselines in the same run; how near matching comes to an exhaustive
 * search; and how fast it all is on one core.
 */

import {
  coverage,
  GROUPS,
  type HeldOut,
  leaveOneOut,
  mean,
  median,
} from '../../language/build/optics/evaluate.ts';
import { readFilms } from '../../language/build/optics/films.ts';
import { fit, SETTINGS } from '../../language/build/optics/fit.ts';
import { kubelkaMunk } from '../../language/build/optics/kubelka-munk.ts';
import { filmMicrons } from '../../language/build/optics/measured.ts';
import { PAINTS } from '../../language/build/optics/paints.ts';
import { WITHIN } from '../../language/build/optics/radius.ts';
import { toSample } from '../../language/build/optics/samples.ts';
import type { Lab } from '../../language/src/optics/cie.ts';
import { opticalData } from '../../language/src/optics/data.ts';
import { match } from '../../language/src/optics/match.ts';
import { plate } from '../../language/src/optics/plate.ts';
import { groundOf } from '../../language/src/optics/spectrum.ts';
import { layAll, toColour } from '../../language/src/optics/stack.ts';
import { GLOSS } from '../../language/src/optics/surface.ts';
import { lay, newStack } from '../../language/src/optics/transport.ts';
import { flat } from '../../language/src/optics/wavelengths.ts';
import { everyRecipe, leastDifference, seeded } from '../optics/exhaustive.ts';
import { text } from '../optics/files.ts';
import { greys, modelled, type Vector, vectors } from '../optics/vectors.ts';
import { ms, quantile, type Table, times } from './table.ts';

/** The cones, and Kubelka and Munk's model, against films worked out by full radiative transfer. */
export function transferErrors(): Table {
  const all = vectors();
  const regimes = new Map(
    [...new Set(all.map((v) => v.regime))].map((name) => [name, (v: Vector) => v.regime === name]),
  );
  regimes.set('all', () => true);
  return {
    title: 'Light in films, against full radiative transfer',
    how: 'Films of known absorption and scattering over even grounds, worked out with 64 directions; mean and largest error in reflectance and, for flat greys, in ΔE00 (D65, 2°). Kubelka–Munk with Saunderson’s correction, its coefficients converted by K = 2a, S = 0.75 s: a fit to films would take up part of its error.',
    head: ['films', 'rows', 'R', 'ΔE00', 'Kubelka–Munk: R', 'ΔE00'],
    rows: [...regimes].map(([name, member]) => {
      const of = all.filter(member);
      const cells = (by: (v: Vector) => number): string[] =>
        [
          [of.map((v) => Math.abs(by(v) - v.reflectance)), 4] as const,
          [of.map((v) => greys(by(v), v.reflectance)), 2] as const,
        ].map(([off, digits]) => `${mean(off).toFixed(digits)}, ${Math.max(...off).toFixed(digits)}`);
      return [name, String(of.length), ...cells(modelled), ...cells((v) => v.kubelkaMunk)];
    }),
  };
}

/** Every mixture of the measured oil films predicted from the others. Errors are ΔE00 under D65, 2°. */
export function colourErrors(): Table[] {
  const films = readFilms(text('oil-films.csv'));
  const heldOut = leaveOneOut(films);
  const older = leaveOneOut(films, { ...SETTINGS, forward: kubelkaMunk });
  const microns = filmMicrons(fit(films.map(toSample), PAINTS.length));
  const cell = (values: readonly number[]): string =>
    `${mean(values).toFixed(2)} (${median(values).toFixed(2)})`;
  const readings = ['strict', 'thickness', 'own'] as const;
  const errors: Table = {
    title: 'Colour of measured oil films, every mixture left out in turn',
    how: `ΔE00 (D65, 2°), mean and in brackets median; every film fitted without, from a cold start until nothing moved. Strict: nothing read from the film; thickness: its thickness read from it; film: thickness and gloss read from it. Kubelka–Munk: that model in place of the tool’s, in the same fit. The baselines, over white: one constant K/S for each paint, and the average of the sRGB values. The films come out ${microns.toFixed(0)} µm thick, dry.`,
    head: [
      '',
      'one constant ÷ strict',
      'sRGB mean ÷ strict',
      'films',
      'strict',
      'thickness',
      'film',
      'Kubelka–Munk: strict',
      'thickness',
      'film',
      'one constant',
      'sRGB mean',
    ],
    rows: GROUPS.map(([name, member]) => {
      const of = heldOut.filter((h) => member(h.film));
      const old = older.filter((h) => member(h.film));
      const strict = mean(of.flatMap((h) => h.strict));
      const [constant, average] = [of.map((h) => h.singleConstant), of.map((h) => h.srgbAverage)];
      return [
        name,
        times(mean(constant) / strict),
        times(mean(average) / strict),
        String(of.length),
        ...readings.map((key) => cell(of.flatMap((h) => h[key]))),
        ...readings.map((key) => cell(old.flatMap((h) => h[key]))),
        cell(constant),
        cell(average),
      ];
    }),
  };
  const gain = (key: (typeof readings)[number], member: (h: HeldOut) => boolean): string => {
    const gains = heldOut.flatMap((h, i) => (member(h) ? [mean(older[i]![key]) - mean(h[key])] : []));
    const spread = mean(gains.map((g) => (g - mean(gains)) ** 2));
    return `${mean(gains).toFixed(2)} ± ${Math.sqrt(spread / (gains.length - 1)).toFixed(2)}`;
  };
  const gains: Table = {
    title: 'The cones against Kubelka–Munk, film by film',
    how: 'How much farther off Kubelka–Munk is on the same left-out films, ΔE00: mean of the films’ differences and its standard error.',
    head: ['', ...readings.map((key) => (key === 'own' ? 'film' : key))],
    rows: GROUPS.map(([name, member]) => [name, ...readings.map((key) => gain(key, (h) => member(h.film)))]),
  };
  const share = (v: number): string => `${(100 * v).toFixed(0)} %`;
  const covered: Table = {
    title: 'What the radius holds',
    how: `Share of the left-out films whose colour, over white and over black, lies within the radius printed for it (${share(WITHIN)} is promised) and within twice as much. The radius of each is made from the other films alone.`,
    head: ['', 'films', 'within', 'within twice'],
    rows: coverage(heldOut).map((c) => [c.name, String(c.films), share(c.within), share(c.withinTwice)]),
  };
  return [errors, gains, covered];
}

const paint = (id: string) => ({ name: id, pigments: [{ optical: opticalData(id)!, fraction: 0.35 }] });
const below = groundOf([90, 0, 5], GLOSS);
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
  const [a, s] = [flat(0.3), flat(0.7)];
  const film = plate(a, s);
  const laid = newStack();
  return {
    title: 'Colour, time on one core',
    how: 'Warm, the same work again and again.',
    head: ['work', 'p50', 'p95'],
    rows: [
      timed('1,000 films worked out, 31 bands', 50, () => {
        for (let i = 0; i < 1000; i++) plate(a, s, film);
      }),
      timed('1,000 films laid, 31 bands', 50, () => {
        for (let i = 0; i < 1000; i++) lay(film, below, laid);
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
