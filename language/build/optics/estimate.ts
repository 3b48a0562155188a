/**
 * One pigment from a few films whose making is not fully known: absorption and scattering per µm of pure pigment that
 * explain what was seen, with priors for what the films leave open. Damped Gauss–Newton on logarithms, as in `fit.ts`.
 *
 * Charts are often matt or short of binder, so that part of what they send back was scattered by air and by the surface
 * and not by the pigment. Every chart film therefore has a mirrored share and a scattering of its own; how much is left
 * to the pigment is told by what a pigment is (`expectations.ts`).
 */
import { labRoot } from '../../src/optics/cie.ts';
import { endless, filmOverGround } from '../../src/optics/transport.ts';
import { BANDS, type Spectrum } from '../../src/optics/wavelengths.ts';
import { Bordered } from './banded.ts';

export interface Pair {
  readonly a: Spectrum;
  readonly s: Spectrum;
}

/** A film of the pigment over grounds, all of one unknown load. */
export interface ChartFilm {
  readonly kind: 'film';
  readonly id: string;
  /** internal reflectance of each ground and what was seen of the film over it, mirrored light included */
  readonly over: readonly { readonly ground: Spectrum; readonly seen: Spectrum }[];
}

/**
 * An endless film of the paint in white, by volumes; without `white` the masstone. Mirrored light left out, as well as
 * whoever measured it could.
 */
export interface Tint {
  readonly kind: 'tint';
  /** parts of paint in one of the mixture, and of pigment */
  readonly part: number;
  readonly share: number;
  readonly white?: Pair & { readonly share: number };
  readonly seen: Spectrum;
}

export interface Expectations {
  /** ln of the mean scattering per µm, and its standard deviation */
  readonly scattering: readonly [mean: number, sd: number];
  /** ln of the largest absorption per µm, and its standard deviation */
  readonly peak?: readonly [mean: number, sd: number];
  /** absorption only falls towards the red: the edge of a band gap or a charge transfer */
  readonly edge?: boolean;
  /** shape of ln absorption it shares with another sort of the same substance, whatever its strength */
  readonly shape?: Spectrum;
}

export interface Estimate extends Pair {
  /** of each film: load in µm of pure pigment, mirrored share, scattering that is not the pigment's */
  readonly films: readonly FilmFigures[];
}

export interface FilmFigures {
  readonly load: number;
  readonly mirrored: number;
  readonly air: number;
}

/**
 * Standard deviation of a root of reflectance. What is off in one band of a chart film (streaks, a ground not quite flat)
 * is off in its neighbours too, so that about five bands in thirty-one say something of their own: 0.016 × √6.
 */
const NOISE = 0.04;
/** What the films' own figures are taken to be: µm of pure pigment, mirrored share, scattering of air; widths in ln. */
const FILM = {
  load: Math.log(6),
  loadWidth: 2,
  mirrored: 0.04,
  gloss: 0.006,
  air: Math.log(0.05),
  airWidth: 1.5,
};
const BEND = 0.12;
const SLOPE = 0.03;
/** The first and the last band of absorption are held to their neighbours: nothing bends them from outside. */
const END = 0.1;
/** Bands that make the peak of absorption. */
const TOP = 5;
/** What paint in another binder scatters beside its pigment (extenders, matting, air), per µm; the masstone's mirrored share. */
const PAINT = { beside: Math.log(0.02), besideWidth: 1.5, gloss: 0.006 };
/** How far the curve of a sort may leave the shape it shares. */
const SHAPE = 0.15;
/** How firmly an edge absorber's curve is kept from rising again. */
const RISE = 0.02;
const H = 1e-4;
const [LEAST, MOST] = [Math.log(1e-6), Math.log(100)];
const rootOf = (seen: number): number => labRoot(Math.max(0, seen));

/** With `known`, the pigment stays as it is and only the films' own figures are found. */
export function estimate(
  films: readonly ChartFilm[],
  tints: readonly Tint[],
  expected: Expectations,
  noise = NOISE,
  known?: Pair,
): Estimate {
  const size = 2 * BANDS;
  const own = 3 * films.length + 3;
  const theta = new Float64Array(size + own);
  const OFFSET = size + own - 1;
  const [BESIDE, GLOSS] = [OFFSET - 1, OFFSET - 2];
  theta[BESIDE] = PAINT.beside;
  for (let b = 0; b < BANDS; b++) {
    theta[2 * b] = known ? Math.log(known.a[b]!) : (expected.peak?.[0] ?? Math.log(0.5)) - 1;
    theta[2 * b + 1] = known ? Math.log(known.s[b]!) : expected.scattering[0];
  }
  // No band of a film can be darker than the light its face mirrors.
  const mirrored = films.map(({ over }) =>
    over.reduce(
      (least, { seen }) => seen.reduce((m, r) => (r < m ? Math.max(0, r) : m), least),
      FILM.mirrored,
    ),
  );
  films.forEach((_, f) => {
    theta[size + 3 * f] = FILM.load;
    theta[size + 3 * f + 1] = mirrored[f]!;
    theta[size + 3 * f + 2] = FILM.air;
  });
  // The mean of scattering ties every band to every other: as a figure of the border, with a stiff tie to each band's.
  const equations = new Bordered(size, 4, own);
  const weights = films.map(() => 1);

  const cost = (at: Float64Array, derive: boolean, misfit?: Float64Array): number => {
    let total = 0;
    if (derive) equations.clear();
    const visit = (places: number[], slopes: number[], miss: number): void => {
      total += miss * miss;
      if (derive) equations.add(places, slopes, miss);
    };
    for (let b = 0; b < BANDS; b++) {
      if (known) for (const i of [2 * b, 2 * b + 1]) visit([i], [1e4], 0);
      // Each band a little, which for a smooth curve is its mean.
      const w = 1 / (expected.scattering[1] * Math.sqrt(BANDS));
      visit([2 * b + 1], [w], w * (expected.scattering[0] - at[2 * b + 1]!));
      visit([2 * b], [0.05], 0.05 * (Math.log(0.01) - at[2 * b]!));
      if (b > 0) {
        const v = 1 / SLOPE;
        visit([2 * b + 1, 2 * b - 1], [v, -v], v * (at[2 * b - 1]! - at[2 * b + 1]!));
        const rise = at[2 * b]! - at[2 * b - 2]!;
        if (expected.edge && rise > 0) visit([2 * b, 2 * b - 2], [1 / RISE, -1 / RISE], -rise / RISE);
      }
      if (b === 1 || b === BANDS - 1)
        visit([2 * b, 2 * b - 2], [1 / END, -1 / END], (at[2 * b - 2]! - at[2 * b]!) / END);
      if (b > 1) {
        const v = 1 / BEND;
        visit(
          [2 * b, 2 * b - 2, 2 * b - 4],
          [v, -2 * v, v],
          v * (2 * at[2 * b - 2]! - at[2 * b]! - at[2 * b - 4]!),
        );
      }
      if (expected.shape) {
        const v = 1 / SHAPE;
        visit([2 * b, OFFSET], [v, -v], v * (expected.shape[b]! + at[OFFSET]! - at[2 * b]!));
      }
    }
    visit([OFFSET], [0.1], -0.1 * at[OFFSET]!);
    // As many residuals as bands at the top, so that no single one can stand for the peak.
    for (const b of top) {
      const w = 1 / ((expected.peak?.[1] ?? Number.POSITIVE_INFINITY) * Math.sqrt(TOP));
      visit([2 * b], [w], w * ((expected.peak?.[0] ?? 0) - at[2 * b]!));
    }
    misfit?.fill(0);
    films.forEach(({ over }, f) => {
      const [x, m, v] = [size + 3 * f, size + 3 * f + 1, size + 3 * f + 2];
      visit([x], [1 / FILM.loadWidth], (FILM.load - at[x]!) / FILM.loadWidth);
      visit([m], [1 / FILM.gloss], (mirrored[f]! - at[m]!) / FILM.gloss);
      visit([v], [1 / FILM.airWidth], (FILM.air - at[v]!) / FILM.airWidth);
      const load = Math.exp(at[x]!);
      const air = Math.exp(at[v]!);
      const w = Math.sqrt(weights[f]!) / noise;
      for (let b = 0; b < BANDS; b++) {
        const a = load * Math.exp(at[2 * b]!);
        const s = load * Math.exp(at[2 * b + 1]!);
        for (const { ground, seen } of over) {
          if (!Number.isFinite(seen[b]!)) continue;
          const look = (aa: number, ss: number, mm = at[m]!): number =>
            rootOf(filmOverGround(aa, ss, ground[b]!) + mm);
          const here = look(a, s + air);
          const off = rootOf(seen[b]!) - here;
          if (misfit) misfit[f]! += (off * off) / (BANDS * over.length);
          if (!derive) {
            total += (w * off) ** 2;
            continue;
          }
          const byA = (w * (look(a * (1 + H), s + air) - here)) / H;
          const byS = (w * (look(a, (s + air) * (1 + H)) - here)) / (H * (s + air));
          visit(
            [2 * b, 2 * b + 1, x, m, v],
            [byA, byS * s, byA + byS * s, (w * (look(a, s + air, at[m]! + 1e-5) - here)) / 1e-5, byS * air],
            w * off,
          );
        }
      }
    });
    visit([BESIDE], [1 / PAINT.besideWidth], (PAINT.beside - at[BESIDE]!) / PAINT.besideWidth);
    visit([GLOSS], [1 / PAINT.gloss], -at[GLOSS]! / PAINT.gloss);
    const beside = Math.exp(at[BESIDE]!);
    for (const { part, share, white, seen } of tints)
      for (let b = 0; b < BANDS; b++) {
        const a = share * Math.exp(at[2 * b]!);
        const s = share * Math.exp(at[2 * b + 1]!);
        const [wa, ws] = white ? [white.share * white.a[b]!, white.share * white.s[b]!] : [0, 0];
        const w = 1 / noise;
        const look = (aa: number, ss: number, vv: number, m: number): number =>
          rootOf(endless(aa + wa, ss + vv + ws) + m);
        const v = part * beside;
        const m = white ? 0 : at[GLOSS]!;
        const here = look(a, s, v, m);
        const miss = w * (rootOf(seen[b]!) - here);
        if (!derive) {
          total += miss * miss;
          continue;
        }
        const slopes = [
          (w * (look(a * (1 + H), s, v, m) - here)) / H,
          (w * (look(a, s * (1 + H), v, m) - here)) / H,
          (w * (look(a, s, v * (1 + H), m) - here)) / H,
          white ? 0 : (w * (look(a, s, v, m + 1e-5) - here)) / 1e-5,
        ];
        visit([2 * b, 2 * b + 1, BESIDE, GLOSS], slopes, miss);
      }
    return total;
  };

  let top: number[] = [];
  const misfit = new Float64Array(films.length);
  const next = new Float64Array(theta.length);
  let damping = 1e-1;
  for (let step = 0, still = 0; step < 200 && still < 3; step++) {
    // Where the absorption is largest stays fixed within a step.
    top = Array.from({ length: BANDS }, (_, b) => b)
      .sort((p, q) => theta[2 * q]! - theta[2 * p]!)
      .slice(0, TOP);
    // Of several sorts, those that fit the others worst count least.
    cost(theta, false, misfit);
    if (films.length > 2)
      for (let f = 0; f < films.length; f++) weights[f] = 1 / Math.sqrt(1 + misfit[f]! / (2 * noise) ** 2);
    const best = cost(theta, true);
    for (;;) {
      const move = equations.solve(damping);
      if (move) {
        for (let i = 0; i < theta.length; i++) {
          const to = theta[i]! + Math.min(0.7, Math.max(-0.7, move[i]!));
          next[i] = i >= size ? to : known ? theta[i]! : Math.min(MOST, Math.max(LEAST, to));
        }
        for (let f = 0; f < films.length; f++) next[size + 3 * f + 1] = Math.max(0, next[size + 3 * f + 1]!);
        const there = cost(next, false);
        if (there < best) {
          still = best - there < 1e-5 * best ? still + 1 : 0;
          theta.set(next);
          damping = Math.max(1e-9, damping / 5);
          break;
        }
      }
      damping *= 6;
      if (damping > 1e9) {
        still = 3;
        break;
      }
    }
  }
  return {
    a: Float64Array.from({ length: BANDS }, (_, b) => Math.exp(theta[2 * b]!)),
    s: Float64Array.from({ length: BANDS }, (_, b) => Math.exp(theta[2 * b + 1]!)),
    films: films.map((_, f) => ({
      load: Math.exp(theta[size + 3 * f]!),
      mirrored: theta[size + 3 * f + 1]!,
      air: Math.exp(theta[size + 3 * f + 2]!),
    })),
  };
}

/** Absorption at its peak: the geometric mean of its largest bands. */
export const peakOf = (a: Spectrum): number =>
  Math.exp(
    Array.from(a, Math.log)
      .sort((p, q) => q - p)
      .slice(0, TOP)
      .reduce((sum, v) => sum + v / TOP, 0),
  );

/** Load, mirrored share and air under which a known pigment looks most like a film of it. */
export const readFilm = (film: ChartFilm, pigment: Pair): FilmFigures =>
  estimate([film], [], { scattering: [0, 1e3] }, NOISE, pigment).films[0]!;
