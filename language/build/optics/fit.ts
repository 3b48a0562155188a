/**
 * Finds absorption and scattering of every paint in every band, and the thickness and gloss of every film, from films of
 * known composition over known substrates: all at once, by damped Gauss–Newton steps (Levenberg, Marquardt) on
 * logarithms, in a lightness-like root of the reflectance seen in air, because that is where the eye's steps are even.
 * It runs from a cold start until nothing moves any more.
 *
 * What the films leave open is held by weak priors: thicknesses near one another, mirrored light near Fresnel's,
 * absorption curves bending little from band to band, scattering curves running level. Films that no coefficients
 * explain (fluorescence, a weighing slip) are listened to less, by weights that fall with their misfit (as least
 * absolute residuals would), so that they do not spoil their neighbours.
 */
import { labRoot } from '../../src/optics/cie.ts';
import { inward, type Surface, surface } from '../../src/optics/surface.ts';
import { filmOverGround } from '../../src/optics/transport.ts';
import { BANDS, type Spectrum } from '../../src/optics/wavelengths.ts';
import { Bordered } from './banded.ts';

/** A film to fit: volume shares of paints, and what was seen over each of its substrates. */
export interface Sample {
  readonly id: string;
  /** index of the paint and its share of the volume; shares sum to 1 */
  readonly shares: readonly (readonly [paint: number, share: number])[];
  /** reflectances in air, specular included */
  readonly over: readonly { readonly substrate: Spectrum; readonly seen: Spectrum }[];
}

/** ln of absorption and scattering per unit of thickness, by paint, then band. */
export interface LogCoefficients {
  readonly lnA: readonly Float64Array[];
  readonly lnS: readonly Float64Array[];
}

export interface Fit extends LogCoefficients {
  /** of each sample: thickness in the common unit (near 1), mirrored light seen (near k1), how far it was listened to */
  readonly thickness: Float64Array;
  readonly mirrored: Float64Array;
  readonly weight: Float64Array;
  /** steps taken, and whether the last of them no longer moved anything */
  readonly steps: number;
  readonly converged: boolean;
}

/** Light that leaves a film of absorption `a`, scattering `s` (both × thickness) over an internal reflectance. */
export type Forward = (a: number, s: number, ground: number) => number;

export interface Settings {
  readonly forward: Forward;
  readonly face: Surface;
  /** standard deviation expected of ln thickness, and of the mirrored light */
  readonly spread: number;
  readonly gloss: number;
  /** misfit of a root of reflectance (0.01 is 1.16 units of L*) from which on a film counts less */
  readonly tolerance: number;
  /** weight of a film of several paints against one of a single paint, which cannot be wrongly weighed out */
  readonly mixture: number;
  /** standard deviations per band: of the bend of ln absorption, and of the slope of ln scattering */
  readonly bend: number;
  readonly slope: number;
}

export const SETTINGS: Settings = {
  forward: filmOverGround,
  face: surface(true),
  spread: 0.25,
  gloss: 0.003,
  tolerance: 0.003,
  mixture: 0.5,
  bend: 0.1,
  slope: 0.05,
};

/** Standard deviation of a root of reflectance where all is well. */
const NOISE = 0.008;
/** Logarithms are drawn weakly towards these, so that a coefficient no film shows stays a number. */
const PRIOR = { a: Math.log(0.05), s: Math.log(0.5), width: 4 };
const [LEAST, MOST] = [Math.log(1e-5), Math.log(1000)];
const STEPS = 200;

interface Internal {
  readonly root: readonly Float64Array[];
  readonly below: readonly Float64Array[];
}

const internal = ({ over }: Sample, face: Surface): Internal => ({
  root: over.map(({ seen }) => Float64Array.from(seen, (r) => labRoot(r))),
  below: over.map(({ substrate }) => Float64Array.from(substrate, (r) => inward(r, face))),
});

const rootOf = (seen: number): number => labRoot(Math.max(0, seen));
/** Relative step for slopes. */
const H = 1e-4;

/** Fits all samples from a cold start. */
export function fit(samples: readonly Sample[], paints: number, settings = SETTINGS): Fit {
  const films = samples.length;
  const perBand = 2 * paints;
  const size = perBand * BANDS;
  // Paints and films with whom nothing in this fit has to do with keep their priors; no case of its own.
  const theta = new Float64Array(size + 2 * films);
  const a = (p: number, b: number): number => b * perBand + 2 * p;
  const s = (p: number, b: number): number => b * perBand + 2 * p + 1;
  const x = (f: number): number => size + 2 * f;
  const m = (f: number): number => size + 2 * f + 1;
  for (let b = 0; b < BANDS; b++)
    for (let p = 0; p < paints; p++) {
      theta[a(p, b)] = Math.log(0.5);
      theta[s(p, b)] = Math.log(0.5);
    }
  for (let f = 0; f < films; f++) theta[m(f)] = settings.face.k1;
  const seen = samples.map((sample) => internal(sample, settings.face));
  const listened = samples.map((sample) => (sample.shares.length > 1 ? settings.mixture : 1));
  const weight = Float64Array.from(listened);
  const equations = new Bordered(size, 3 * perBand - 1, 2 * films);

  const priors = (at: Float64Array, visit: (at: number[], slopes: number[], miss: number) => void): void => {
    for (let p = 0; p < paints; p++)
      for (let b = 0; b < BANDS; b++) {
        const w = 1 / PRIOR.width;
        visit([a(p, b)], [w], w * (PRIOR.a - at[a(p, b)]!));
        visit([s(p, b)], [w], w * (PRIOR.s - at[s(p, b)]!));
        if (b > 0) {
          const v = 1 / settings.slope;
          visit([s(p, b), s(p, b - 1)], [v, -v], v * (at[s(p, b - 1)]! - at[s(p, b)]!));
        }
        if (b > 1) {
          const v = 1 / settings.bend;
          visit(
            [a(p, b), a(p, b - 1), a(p, b - 2)],
            [v, -2 * v, v],
            v * (2 * at[a(p, b - 1)]! - at[a(p, b)]! - at[a(p, b - 2)]!),
          );
        }
      }
    for (let f = 0; f < films; f++) {
      visit([x(f)], [1 / settings.spread], -at[x(f)]! / settings.spread);
      visit([m(f)], [1 / settings.gloss], (settings.face.k1 - at[m(f)]!) / settings.gloss);
    }
  };

  /** The sum of squares; with `derive` the equations are filled too. `misfit` takes each film's mean square. */
  const cost = (at: Float64Array, derive: boolean, misfit?: Float64Array): number => {
    let total = 0;
    if (derive) equations.clear();
    priors(at, (places, slopes, miss) => {
      total += miss * miss;
      if (derive) equations.add(places, slopes, miss);
    });
    misfit?.fill(0);
    for (let f = 0; f < films; f++) {
      const { shares } = samples[f]!;
      const thick = Math.exp(at[x(f)]!);
      const mirrored = at[m(f)]!;
      const w = Math.sqrt(weight[f]!) / NOISE;
      const { root, below } = seen[f]!;
      const n = 2 * shares.length;
      const places = new Array<number>(n + 2);
      const slopes = new Float64Array(n + 2);
      for (let b = 0; b < BANDS; b++) {
        let absorbs = 0;
        let scatters = 0;
        for (const [p, share] of shares) {
          absorbs += share * thick * Math.exp(at[a(p, b)]!);
          scatters += share * thick * Math.exp(at[s(p, b)]!);
        }
        for (let o = 0; o < root.length; o++) {
          const g = below[o]![b]!;
          const out = settings.forward(absorbs, scatters, g) + mirrored;
          const here = rootOf(out);
          const off = root[o]![b]! - here;
          const miss = w * off;
          total += miss * miss;
          if (misfit) misfit[f]! += (off * off) / (root.length * BANDS);
          if (!derive) continue;
          const byA = (w * (rootOf(settings.forward(absorbs * (1 + H), scatters, g) + mirrored) - here)) / H;
          const byS = (w * (rootOf(settings.forward(absorbs, scatters * (1 + H), g) + mirrored) - here)) / H;
          for (let i = 0; i < shares.length; i++) {
            const [p, share] = shares[i]!;
            places[2 * i] = a(p, b);
            places[2 * i + 1] = s(p, b);
            slopes[2 * i] = (byA * share * thick * Math.exp(at[a(p, b)]!)) / absorbs;
            slopes[2 * i + 1] = (byS * share * thick * Math.exp(at[s(p, b)]!)) / scatters;
          }
          places[n] = x(f);
          slopes[n] = byA + byS;
          places[n + 1] = m(f);
          slopes[n + 1] = (w * (rootOf(out + 1e-5) - here)) / 1e-5;
          equations.add(places, slopes, miss);
        }
      }
    }
    return total;
  };

  const misfit = new Float64Array(films);
  let damping = 1e-2;
  let still = 0;
  let steps = 0;
  const next = new Float64Array(theta.length);
  for (; steps < STEPS && still < 2; steps++) {
    // New weights change what is asked, so the sum of squares is taken afresh after them.
    cost(theta, false, misfit);
    for (let f = 0; f < films; f++)
      weight[f] = listened[f]! / Math.sqrt(1 + misfit[f]! / settings.tolerance ** 2);
    const best = cost(theta, true);
    let moved = 0;
    for (let attempt = 0; attempt < 12; attempt++) {
      const move = equations.solve(damping);
      if (move) {
        moved = 0;
        for (let i = 0; i < theta.length; i++) {
          const step = Math.min(1, Math.max(-1, move[i]!));
          const to = theta[i]! + step;
          next[i] = i < size ? Math.min(MOST, Math.max(LEAST, to)) : to;
          moved = Math.max(moved, Math.abs(next[i]! - theta[i]!));
        }
        for (let f = 0; f < films; f++) next[m(f)] = Math.max(0, next[m(f)]!);
        const there = cost(next, false);
        if (there < best) {
          still = best - there < 1e-6 * best ? still + 1 : 0;
          theta.set(next);
          damping = Math.max(1e-9, damping / 6);
          break;
        }
      }
      damping *= 8;
      if (damping > 1e8) {
        still = 2;
        break;
      }
    }
  }
  const spectra = (at: (p: number, b: number) => number): Float64Array[] =>
    Array.from({ length: paints }, (_, p) =>
      Float64Array.from({ length: BANDS }, (__, b) => theta[at(p, b)]!),
    );
  return {
    lnA: spectra(a),
    lnS: spectra(s),
    thickness: Float64Array.from(samples, (_, f) => Math.exp(theta[x(f)]!)),
    mirrored: Float64Array.from(samples, (_, f) => theta[m(f)]!),
    weight,
    steps,
    converged: still >= 2,
  };
}

/** Absorption and scattering of a mixture, per unit of thickness. */
export function mixed(sample: Sample, { lnA, lnS }: LogCoefficients): { a: Spectrum; s: Spectrum } {
  const a = new Float64Array(BANDS);
  const s = new Float64Array(BANDS);
  for (const [p, share] of sample.shares)
    for (let b = 0; b < BANDS; b++) {
      a[b]! += share * Math.exp(lnA[p]![b]!);
      s[b]! += share * Math.exp(lnS[p]![b]!);
    }
  return { a, s };
}

/** Thickness and mirrored light under which known paints look most like what was seen; the misfit that stays (rms). */
export function fitOwn(
  sample: Sample,
  coefficients: LogCoefficients,
  settings = SETTINGS,
): { x: number; m: number; misfit: number } {
  const { root, below } = internal(sample, settings.face);
  const { a, s } = mixed(sample, coefficients);
  const squares = (x: number, m: number): number => {
    let total = 0;
    for (let o = 0; o < root.length; o++)
      for (let b = 0; b < BANDS; b++)
        total += (root[o]![b]! - rootOf(settings.forward(a[b]! * x, s[b]! * x, below[o]![b]!) + m)) ** 2;
    return total;
  };
  const cost = (lnX: number, m: number): number =>
    m < 0 || Math.abs(lnX) > 2.5
      ? Number.POSITIVE_INFINITY
      : squares(Math.exp(lnX), m) / NOISE ** 2 +
        (lnX / settings.spread) ** 2 +
        ((m - settings.face.k1) / settings.gloss) ** 2;
  let at = [0, settings.face.k1] as [number, number];
  const step = [0.1, 0.002];
  let best = cost(...at);
  for (let i = 0; i < 60 && step[0]! > 1e-4; i++) {
    let moved = false;
    for (const d of [0, 1])
      for (const sign of [1, -1]) {
        const next = [...at] as [number, number];
        next[d]! += sign * step[d]!;
        const there = cost(...next);
        if (there < best) [at, best, moved] = [next, there, true];
      }
    if (!moved) {
      step[0]! /= 3;
      step[1]! /= 3;
    }
  }
  const [x, m] = [Math.exp(at[0]), at[1]];
  return { x, m, misfit: Math.sqrt(squares(x, m) / (root.length * BANDS)) };
}
