/**
 * Films of many pigments over four grounds, black to white (`films_over_four_grounds_reflectance.csv`), several sorts of
 * a pigment among them. Neither the grounds' own spectra nor the films' thickness are told: the white and the black are
 * taken as flat, and the two greys between them are read from the films themselves.
 */
import { inward, surface } from '../../src/optics/surface.ts';
import { filmOverGround } from '../../src/optics/transport.ts';
import { BANDS, type Spectrum } from '../../src/optics/wavelengths.ts';
import { readTable } from './csv.ts';
import type { ChartFilm } from './estimate.ts';
import { spectrum } from './films.ts';

const GLOSSY = surface(false);
/** Reflectance of the white and of the black ground, mirrored light left out (assumption: best of those tried). */
const [WHITE, BLACK] = [0.88, 0.035];
/** Light mirrored by the films, on the average of those that are darkest. */
const MIRRORED = 0.03;
/** Films that let this much difference between white and black through say something of the greys. */
const CONTRAST = 0.25;

type Four = readonly Spectrum[];

/** Chart films by name, in the order of their sorts. */
export interface Charts {
  /** internal reflectances of the four grounds, black to white */
  readonly grounds: readonly Spectrum[];
  /** share of the light the films mirror, on the average */
  readonly mirrored: number;
  has(name: string): boolean;
  films(name: string, sorts?: readonly number[]): ChartFilm[];
}

export function readCharts(csv: string): Charts {
  const seen = new Map<string, Map<number, Spectrum[]>>();
  for (const row of readTable(csv)) {
    const sorts = seen.get(row.pigment!) ?? new Map<number, Spectrum[]>();
    seen.set(row.pigment!, sorts);
    const films = sorts.get(Number(row.sort)) ?? [];
    sorts.set(Number(row.sort), films);
    films[Number(row.ground) - 1] = spectrum(row, `${row.pigment} ${row.sort}, ground ${row.ground}`);
  }
  const stray = strayLight(seen);
  for (const sorts of seen.values())
    for (const four of sorts.values())
      for (const values of four) {
        for (let b = 0; b < BANDS; b++) values[b]! -= stray[b]!;
        // The charts begin at 410 nm: what lies before is nobody's measurement.
        values[0] = Number.NaN;
      }
  const grounds = groundsOf([...seen.values()].flatMap((sorts) => [...sorts.values()]));
  return {
    grounds,
    mirrored: MIRRORED,
    has: (name) => seen.has(name),
    films(name, wanted) {
      const sorts = seen.get(name);
      if (!sorts) throw new Error(`no chart film of ${name}`);
      return [...sorts]
        .filter(([sort]) => !wanted || wanted.includes(sort))
        .map(([sort, four]) => ({
          kind: 'film' as const,
          id: `${name} ${sort}`,
          over: four.map((s, g) => ({ ground: grounds[g]!, seen: s })),
        }));
    },
  };
}

/** Charts of blacks and near-blacks, as grey as pigments are. */
const BLACKS = ['aniline-black', 'vegetable-or-ivory-black', 'magnetite', 'sepia', 'bistre'];

/** What films of blacks over black show more of in one band than on the average of the bands: light gone astray. */
function strayLight(seen: ReadonlyMap<string, ReadonlyMap<number, readonly Spectrum[]>>): Spectrum {
  const films = BLACKS.flatMap((name) => [...(seen.get(name)?.values() ?? [])].map((four) => four[0]!));
  const mean = (values: readonly number[]): number => values.reduce((sum, v) => sum + v / values.length, 0);
  const levels = films.map((film) => mean([...film]));
  return Float64Array.from({ length: BANDS }, (_, b) => mean(films.map((film, f) => film[b]! - levels[f]!)));
}

/** Internal reflectances of the four grounds: the greys are what most films over them say, each band by itself. */
function groundsOf(films: readonly Four[]): Spectrum[] {
  const flat = (r: number) => new Float64Array(BANDS).fill(inward(r, GLOSSY));
  const [black, white] = [flat(BLACK), flat(WHITE)];
  const greys = [1, 2].map(() => new Float64Array(BANDS));
  for (let b = 1; b < BANDS; b++) {
    const told: [number[], number[]] = [[], []];
    for (const four of films) {
      const r = four.map((s) => s[b]! - MIRRORED);
      if (!(r[3]! - r[0]! > CONTRAST)) continue;
      const [a, s] = solveTwo(r[0]!, r[3]!, black[b]!, white[b]!);
      for (const g of [0, 1] as const) told[g].push(groundBeneath(a, s, r[g + 1]!));
    }
    told.forEach((values, g) => {
      values.sort((p, q) => p - q);
      const cut = Math.floor(values.length / 10);
      const kept = values.slice(cut, values.length - cut);
      greys[g]![b] = kept.reduce((sum, v) => sum + v, 0) / kept.length;
    });
  }
  for (const grey of greys) grey[0] = grey[1]!;
  return [black, greys[0]!, greys[1]!, white];
}

/** Absorption and scattering of a film from what it shows over black and over white: Newton's method on logarithms. */
function solveTwo(overBlack: number, overWhite: number, black: number, white: number): [number, number] {
  let [u, v] = [Math.log(0.1), Math.log(0.1)];
  const off = (p: number, q: number) => [
    filmOverGround(Math.exp(p), Math.exp(q), black) - overBlack,
    filmOverGround(Math.exp(p), Math.exp(q), white) - overWhite,
  ];
  for (let i = 0; i < 40; i++) {
    const [f0, f1] = off(u, v) as [number, number];
    if (Math.hypot(f0, f1) < 1e-7) break;
    const h = 1e-5;
    const [fu, fv] = [off(u + h, v), off(u, v + h)];
    const [a, b, c, d] = [(fu[0]! - f0) / h, (fv[0]! - f0) / h, (fu[1]! - f1) / h, (fv[1]! - f1) / h];
    const det = a * d - b * c;
    if (Math.abs(det) < 1e-12) break;
    const clip = (step: number) => Math.min(1, Math.max(-1, step));
    u = Math.max(-9, u - clip((d * f0 - b * f1) / det));
    v = Math.max(-9, v - clip((a * f1 - c * f0) / det));
  }
  return [Math.exp(u), Math.exp(v)];
}

/** Internal reflectance under a film that shows `seen`: bisection, since more beneath always shows more. */
function groundBeneath(a: number, s: number, seen: number): number {
  let [low, high] = [0, 1];
  for (let i = 0; i < 30; i++) {
    const middle = (low + high) / 2;
    if (filmOverGround(a, s, middle) < seen) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
