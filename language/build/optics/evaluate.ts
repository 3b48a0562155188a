/**
 * How well films are predicted that had no part in the fit: every mixture is left out in turn, the rest fitted from a
 * cold start until nothing moves, and its colour over white and over black predicted (D65/2°, ΔE00). Nobody measured how
 * thick and how glossy each film was, so the difference is given three ways: `strict` (the mean thickness of the others,
 * Fresnel's gloss), `thickness` (its own thickness read from the film, gloss as Fresnel's) and `own` (thickness and gloss
 * both read from it).
 */
import { type Lab, toLab, toXyz } from '../../src/optics/cie.ts';
import { parseColour, toScreen } from '../../src/optics/css.ts';
import { deltaE00 } from '../../src/optics/difference.ts';
import { inward, outward } from '../../src/optics/surface.ts';
import { endless } from '../../src/optics/transport.ts';
import { BANDS, type Spectrum } from '../../src/optics/wavelengths.ts';
import type { MeasuredFilm } from './films.ts';
import {
  type Fit,
  fit,
  fitOwn,
  type LogCoefficients,
  mixed,
  type Sample,
  SETTINGS,
  type Settings,
} from './fit.ts';
import { PAINTS } from './paints.ts';
import { expectedOffOf } from './radius.ts';
import { toSample } from './samples.ts';

export interface HeldOut {
  readonly film: MeasuredFilm;
  /** ΔE00 over white and over black */
  readonly strict: readonly number[];
  readonly thickness: readonly number[];
  readonly own: readonly number[];
  /** ΔE00 that a film thicker or thinner by the usual spread makes of the strict prediction */
  readonly spread: readonly number[];
  /** share of what the film absorbs and scatters that each paint brings, in the order of `film.mass` */
  readonly shares: readonly number[];
  /** ΔE00 over white of the two baselines */
  readonly srgbAverage: number;
  readonly singleConstant: number;
}

export const mean = (values: readonly number[]): number => values.reduce((s, v) => s + v, 0) / values.length;
export function median(values: readonly number[]): number {
  const v = [...values].sort((a, b) => a - b);
  return (v[(v.length - 1) >> 1]! + v[v.length >> 1]!) / 2;
}
export const geometricMean = (values: ArrayLike<number>): number =>
  Math.exp(mean(Array.from(values, Math.log)));

const face = SETTINGS.face;

/** ΔE00 between a sample as measured and as predicted from `coefficients`, over each of its substrates. */
export function differences(
  sample: Sample,
  coefficients: LogCoefficients,
  x: number,
  mirrored = face.k1,
  { forward } = SETTINGS,
): number[] {
  const { a, s } = mixed(sample, coefficients);
  return sample.over.map(({ substrate, seen }) => {
    const predicted = Float64Array.from(
      a,
      (_, b) => forward(a[b]! * x, s[b]! * x, inward(substrate[b]!, face)) + mirrored,
    );
    return deltaE00(toLab(toXyz(predicted)), toLab(toXyz(seen)));
  });
}

/** Leaves every mixture out in turn, or those of them that are `wanted`. */
export function leaveOneOut(
  films: readonly MeasuredFilm[],
  settings: Settings = SETTINGS,
  wanted: (film: MeasuredFilm) => boolean = () => true,
): HeldOut[] {
  const samples = films.map(toSample);
  const out: HeldOut[] = [];
  samples.forEach((sample, i) => {
    if (sample.shares.length < 2 || !wanted(films[i]!)) return;
    const rest = samples.filter((_, j) => j !== i);
    const others = fit(rest, PAINTS.length, settings);
    if (!others.converged) throw new Error(`without ${sample.id} the fit does not come to rest`);
    const usual = geometricMean(others.thickness);
    const thick = fitOwn(sample, others, { ...settings, gloss: 1e-6 });
    const own = fitOwn(sample, others, settings);
    const bases = masstones(films, others);
    const overWhite = toLab(toXyz(sample.over[0]!.seen));
    out.push({
      film: films[i]!,
      strict: differences(sample, others, usual, face.k1, settings),
      thickness: differences(sample, others, thick.x, face.k1, settings),
      own: differences(sample, others, own.x, own.m, settings),
      spread: spreadOf(sample, others, usual, settings),
      shares: sample.shares.map(([p, share]) => {
        const own = (q: number) =>
          mean(Array.from(others.lnA[q]!, (v, b) => Math.exp(v) + Math.exp(others.lnS[q]![b]!)));
        return (share * own(p)) / sample.shares.reduce((sum, [q, of]) => sum + of * own(q), 0);
      }),
      srgbAverage: deltaE00(srgbAverage(sample, bases), overWhite),
      singleConstant: deltaE00(singleConstant(sample, rest, bases), overWhite),
    });
  });
  return out;
}

/** How many of the differences over white and black lie within the radius, and within twice as much. */
export interface Coverage {
  readonly name: string;
  readonly films: number;
  readonly within: number;
  readonly withinTwice: number;
}

/**
 * Whether the radius means what it says: that of every film is made of what the *other* films' differences say of its
 * paints and, where nothing is read from the film, of the usual spread of thicknesses; the film's own difference judges.
 */
export function coverage(heldOut: readonly HeldOut[]): Coverage[] {
  const radii = heldOut.map((h) => {
    const rest = heldOut.filter((other) => other !== h);
    const all = rest.flatMap((other) => other.thickness);
    const squares = [...h.film.mass.keys()].map((name, i) => {
      const own = rest.filter((other) => other.film.mass.has(name)).flatMap((other) => other.thickness);
      return h.shares[i]! * expectedOffOf(own, all) ** 2;
    });
    return Math.sqrt(squares.reduce((sum, v) => sum + v, 0));
  });
  const count = (name: string, member: (h: HeldOut) => boolean, kind: 'strict' | 'thickness'): Coverage => {
    const ratios = heldOut.flatMap((h, i) =>
      member(h)
        ? h[kind].map(
            (off, o) => off / Math.max(1, Math.hypot(radii[i]!, kind === 'strict' ? h.spread[o]! : 0)),
          )
        : [],
    );
    const share = (times: number) => ratios.filter((r) => r <= times).length / ratios.length;
    return { name: `${name}, ${kind}`, films: ratios.length / 2, within: share(1), withinTwice: share(2) };
  };
  return (['strict', 'thickness'] as const).flatMap((kind) => [
    count('every mixture', () => true, kind),
    count('not fluorescent', (h) => !eosin(h.film), kind),
  ]);
}

/** What the usual spread of thicknesses, once up and once down, changes of a prediction over each substrate. */
function spreadOf(sample: Sample, fitted: Fit, usual: number, { forward }: Settings): number[] {
  const logs = Array.from(fitted.thickness, Math.log);
  const sd = Math.sqrt(mean(logs.map((v) => (v - Math.log(usual)) ** 2)));
  const { a, s } = mixed(sample, fitted);
  return sample.over.map(({ substrate }) => {
    const look = (x: number): Lab =>
      toLab(
        toXyz(
          Float64Array.from(
            a,
            (_, b) => forward(a[b]! * x, s[b]! * x, inward(substrate[b]!, face)) + face.k1,
          ),
        ),
      );
    const middle = look(usual);
    return (deltaE00(middle, look(usual * Math.exp(sd))) + deltaE00(middle, look(usual * Math.exp(-sd)))) / 2;
  });
}

/** Masstones over white as seen; the fit's endless film for a paint that was never drawn alone. */
function masstones(films: readonly MeasuredFilm[], fitted: LogCoefficients): Spectrum[] {
  return PAINTS.map((paint, p) => {
    const alone = films.find((f) => f.mass.size === 1 && f.mass.has(paint.name));
    if (alone) return alone.overWhite;
    return Float64Array.from(
      { length: BANDS },
      (_, b) => face.k1 + endless(Math.exp(fitted.lnA[p]![b]!), Math.exp(fitted.lnS[p]![b]!)),
    );
  });
}

/** Baseline: the average of the masstones' sRGB values, as a screen would mix them. */
function srgbAverage(sample: Sample, bases: readonly Spectrum[]): Lab {
  const rgb = [0, 0, 0];
  for (const [p, share] of sample.shares) {
    const shown = toScreen(toLab(toXyz(bases[p]!))).rgb;
    for (let c = 0; c < 3; c++) rgb[c]! += shown[c]! * share;
  }
  return parseColour(`rgb(${rgb.map((v) => v * 255).join(' ')})`)!;
}

/**
 * Baseline: one constant a paint. In tints with white the colour's k/s is what its other tints in that white gave (the
 * median, the film in question left out) or, where there is none, its masstone's; K/S adds by volume.
 */
function singleConstant(sample: Sample, others: readonly Sample[], bases: readonly Spectrum[]): Lab {
  const white = sample.shares.find(([p]) => WHITES.includes(PAINTS[p]!.name))?.[0];
  const ratio = (seen: number): number => {
    const r = Math.max(1e-3, inward(seen, face));
    return (1 - r) ** 2 / (2 * r);
  };
  const seen = new Float64Array(BANDS);
  for (let b = 0; b < BANDS; b++) {
    let sum = 0;
    for (const [p, share] of sample.shares) {
      const tints = others.flatMap((o) => {
        const colour = o.shares.find(([q]) => q === p)?.[1];
        const base = o.shares.find(([q]) => q === white)?.[1];
        if (p === white || o.shares.length !== 2 || colour === undefined || base === undefined) return [];
        return [(ratio(o.over[0]!.seen[b]!) - base * ratio(bases[white!]![b]!)) / colour];
      });
      sum += share * (tints.length > 0 ? Math.max(0, median(tints)) : ratio(bases[p]![b]!));
    }
    seen[b] = outward(1 / (1 + sum + Math.sqrt(sum * (sum + 2))), face);
  }
  return toLab(toXyz(seen));
}

const WHITES = ['ZincWhite', 'LeadWhite'];
const near = (share: number | undefined): boolean => share !== undefined && share > 0.4 && share < 0.6;
const eosin = (f: MeasuredFilm): boolean => [...f.mass.keys()].some((n) => n.startsWith('Eosin'));

/** The groups the figures are stated for. Eosin fluoresces, which no K and S can show; so both counts are given. */
export const GROUPS: readonly (readonly [name: string, member: (f: MeasuredFilm) => boolean])[] = [
  ['50:50 with white', (f) => WHITES.some((w) => near(f.mass.get(w)))],
  ['50:50 with white, not fluorescent', (f) => WHITES.some((w) => near(f.mass.get(w))) && !eosin(f)],
  ['every mixture', () => true],
  ['every mixture, not fluorescent', (f) => !eosin(f)],
  [
    'glaze-like: colour in chalk or barytes',
    (f) =>
      (f.mass.has('BariumSulphate') || f.mass.has('CalciumCarbonate')) &&
      f.mass.size === 2 &&
      !f.mass.has('BoneBlack'),
  ],
];

/** ΔE00 of a group of films: mean and median, nothing read from the film, its thickness, its thickness and gloss. */
export interface Group {
  readonly name: string;
  readonly films: number;
  readonly strict: readonly [mean: number, median: number];
  readonly thickness: readonly [mean: number, median: number];
  readonly own: readonly [mean: number, median: number];
  readonly singleConstant: number;
  readonly srgbAverage: number;
}

export const groups = (heldOut: readonly HeldOut[]): Group[] =>
  GROUPS.map(([name, member]) => {
    const of = heldOut.filter((h) => member(h.film));
    const both = (key: 'strict' | 'thickness' | 'own'): [number, number] => {
      const values = of.flatMap((h) => h[key]);
      return [mean(values), median(values)];
    };
    return {
      name,
      films: of.length,
      strict: both('strict'),
      thickness: both('thickness'),
      own: both('own'),
      singleConstant: mean(of.map((h) => h.singleConstant)),
      srgbAverage: mean(of.map((h) => h.srgbAverage)),
    };
  });
