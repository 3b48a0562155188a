/**
 * Finds K and S of every paint, band by band, and the thickness and gloss of every film, from films of known
 * composition over known substrates. Damped least squares (Levenberg, Marquardt) on the logarithms of K and S, in a
 * lightness-like root of the reflectance seen in air, because that is where the eye's steps are even; coefficients and
 * the films' own figures take turns. What the films leave open is held by weak priors (thicknesses near one another,
 * mirrored light near Fresnel's, spectra smooth), and films that no coefficients explain (fluorescence, a weighing
 * slip) are listened to less, by weights that fall with their misfit (as least absolute residuals would), so that they do not spoil their neighbours.
 */
import { labRoot } from '../../src/optics/cie.ts';
import { filmReflectance } from '../../src/optics/film.ts';
import { solve } from '../../src/optics/linear.ts';
import { inward, outward, type Surface, surface } from '../../src/optics/surface.ts';
import { BANDS, type Spectrum } from '../../src/optics/wavelengths.ts';

/** A film to fit: volume shares of paints, and what was seen over each of its substrates. */
export interface Sample {
  readonly id: string;
  /** index of the paint and its share of the volume; shares sum to 1 */
  readonly shares: readonly (readonly [paint: number, share: number])[];
  /** reflectances in air, specular included */
  readonly over: readonly { readonly substrate: Spectrum; readonly seen: Spectrum }[];
}

/** ln of K and S per unit of thickness, by paint, then band. */
export interface LogCoefficients {
  readonly lnK: readonly Float64Array[];
  readonly lnS: readonly Float64Array[];
}

export interface Fit extends LogCoefficients {
  /** of each sample: thickness in the common unit (near 1), mirrored light seen (near k1), how far it was listened to */
  readonly thickness: Float64Array;
  readonly mirrored: Float64Array;
  readonly weight: Float64Array;
}

export interface Settings {
  readonly face: Surface;
  /** standard deviation expected of ln thickness, and of the mirrored light */
  readonly spread: number;
  readonly gloss: number;
  /** misfit of a root of reflectance (0.01 is 1.16 units of L*) from which on a film counts less */
  readonly tolerance: number;
  /** weight of a film of several paints against one of a single paint, which cannot be wrongly weighed out */
  readonly mixture: number;
  /** strength of the smoothness over wavelength */
  readonly smooth: number;
  readonly rounds: number;
}

export const SETTINGS: Settings = {
  face: surface(true),
  spread: 0.25,
  gloss: 0.003,
  tolerance: 0.003,
  mixture: 0.5,
  smooth: 30,
  rounds: 80,
};

/** Standard deviation of a root of reflectance where all is well. */
const NOISE = 0.008;
/** Logarithms are drawn weakly towards these, so that a coefficient no film shows stays a number. */
const PRIOR = { k: Math.log(0.05), s: Math.log(0.5), width: 4 };
const [LEAST, MOST] = [Math.log(1e-4), Math.log(1000)];

interface Internal {
  readonly root: readonly Float64Array[];
  readonly below: readonly Float64Array[];
}

const internal = ({ over }: Sample, face: Surface): Internal => ({
  root: over.map(({ seen }) => Float64Array.from(seen, (r) => labRoot(r))),
  below: over.map(({ substrate }) => Float64Array.from(substrate, (r) => inward(r, face))),
});

/** What is seen of a film of K·X, S·X over `below`, when `mirrored` of the light turns back at its face. */
export const seenRoot = (kx: number, sx: number, below: number, mirrored: number, face: Surface): number =>
  labRoot(Math.max(0, outward(filmReflectance(kx, sx, below), face) - face.k1 + mirrored));

/** Fits all samples. `from` is where to start, for refits with a film less. */
export function fit(
  samples: readonly Sample[],
  paints: number,
  settings = SETTINGS,
  from?: LogCoefficients,
): Fit {
  const fresh = (value: number) => Array.from({ length: paints }, () => new Float64Array(BANDS).fill(value));
  const lnK = from ? from.lnK.map((v) => Float64Array.from(v)) : fresh(0);
  const lnS = from ? from.lnS.map((v) => Float64Array.from(v)) : fresh(0);
  const thickness = new Float64Array(samples.length).fill(1);
  const mirrored = new Float64Array(samples.length).fill(settings.face.k1);
  const weight = new Float64Array(samples.length).fill(1);
  const seen = samples.map((sample) => internal(sample, settings.face));
  const state = { lnK, lnS, thickness, mirrored, weight };
  for (let round = 0; round < settings.rounds; round++) {
    // From a cold start the coefficients move before the films' own figures may excuse anything.
    if (from || round > 2)
      samples.forEach((sample, f) => {
        const own = fitOwn(sample, state, settings, { x: thickness[f]!, m: mirrored[f]! }, seen[f]!);
        thickness[f] = own.x;
        mirrored[f] = own.m;
        weight[f] =
          (sample.shares.length > 1 ? settings.mixture : 1) /
          Math.sqrt(1 + (own.misfit / settings.tolerance) ** 2);
      });
    for (let b = 0; b < BANDS; b++) fitBand(b, samples, seen, state, settings);
  }
  return state;
}

interface State {
  readonly lnK: Float64Array[];
  readonly lnS: Float64Array[];
  readonly thickness: Float64Array;
  readonly mirrored: Float64Array;
  readonly weight: Float64Array;
}

function fitBand(
  b: number,
  samples: readonly Sample[],
  seen: readonly Internal[],
  state: State,
  settings: Settings,
): void {
  const { lnK, lnS, thickness, mirrored, weight } = state;
  const paints = lnK.length;
  const n = 2 * paints;
  const at = new Float64Array(n);
  const prior = new Float64Array(n);
  const pull = new Float64Array(n);
  for (let p = 0; p < paints; p++)
    for (const [j, table, mean] of [
      [2 * p, lnK[p]!, PRIOR.k],
      [2 * p + 1, lnS[p]!, PRIOR.s],
    ] as const) {
      at[j] = table[b]!;
      const near = [table[b - 1], table[b + 1]].filter((v) => v !== undefined);
      const middle = near.reduce((sum, v) => sum + v, 0) / near.length;
      const w = 1 / PRIOR.width ** 2;
      pull[j] = w + settings.smooth;
      prior[j] = (w * mean + settings.smooth * middle) / pull[j]!;
    }
  const matrix = new Float64Array(n * n);
  const right = new Float64Array(n);
  const cost = (u: Float64Array, derive: boolean): number => {
    let total = 0;
    if (derive) {
      matrix.fill(0);
      right.fill(0);
    }
    for (let j = 0; j < n; j++) {
      const d = u[j]! - prior[j]!;
      total += pull[j]! * d * d;
      if (derive) {
        matrix[j * n + j]! += pull[j]!;
        right[j]! -= pull[j]! * d;
      }
    }
    for (let f = 0; f < samples.length; f++) {
      const { shares } = samples[f]!;
      const x = thickness[f]!;
      let k = 0;
      let s = 0;
      for (const [p, share] of shares) {
        k += share * x * Math.exp(u[2 * p]!);
        s += share * x * Math.exp(u[2 * p + 1]!);
      }
      const { root, below } = seen[f]!;
      const w = Math.sqrt(weight[f]!) / NOISE;
      for (let o = 0; o < root.length; o++) {
        const g = below[o]![b]!;
        const look = (kk: number, ss: number) => seenRoot(kk, ss, g, mirrored[f]!, settings.face) * w;
        const miss = root[o]![b]! * w - look(k, s);
        total += miss * miss;
        if (!derive) continue;
        const dk = (look(k * 1.001, s) - look(k * 0.999, s)) / (0.002 * k);
        const ds = (look(k, s * 1.001) - look(k, s * 0.999)) / (0.002 * s);
        for (const [p, share] of shares) {
          const jk = dk * share * x * Math.exp(u[2 * p]!);
          const js = ds * share * x * Math.exp(u[2 * p + 1]!);
          right[2 * p]! += jk * miss;
          right[2 * p + 1]! += js * miss;
          for (const [r, other] of shares) {
            const lk = dk * other * x * Math.exp(u[2 * r]!);
            const ls = ds * other * x * Math.exp(u[2 * r + 1]!);
            matrix[2 * p * n + 2 * r]! += jk * lk;
            matrix[2 * p * n + 2 * r + 1]! += jk * ls;
            matrix[(2 * p + 1) * n + 2 * r]! += js * lk;
            matrix[(2 * p + 1) * n + 2 * r + 1]! += js * ls;
          }
        }
      }
    }
    return total;
  };
  let damping = 1e-3;
  let best = cost(at, true);
  for (let step = 0; step < 12; step++) {
    const damped = Float64Array.from(matrix);
    for (let j = 0; j < n; j++) damped[j * n + j]! *= 1 + damping;
    const move = solve(damped, Float64Array.from(right));
    if (!move) break;
    const next = at.map((v, j) => Math.min(MOST, Math.max(LEAST, v + Math.min(1, Math.max(-1, move[j]!)))));
    const there = cost(next, false);
    if (there < best) {
      at.set(next);
      const gain = best - there;
      best = cost(at, true);
      damping = Math.max(1e-7, damping / 5);
      if (gain < 1e-5 * best) break;
    } else damping = Math.min(1e6, damping * 6);
  }
  for (let p = 0; p < paints; p++) {
    lnK[p]![b] = at[2 * p]!;
    lnS[p]![b] = at[2 * p + 1]!;
  }
}

/** K and S of a mixture, per unit of thickness. */
export function mixed(sample: Sample, { lnK, lnS }: LogCoefficients): { k: Spectrum; s: Spectrum } {
  const k = new Float64Array(BANDS);
  const s = new Float64Array(BANDS);
  for (const [p, share] of sample.shares)
    for (let b = 0; b < BANDS; b++) {
      k[b]! += share * Math.exp(lnK[p]![b]!);
      s[b]! += share * Math.exp(lnS[p]![b]!);
    }
  return { k, s };
}

/** Thickness and mirrored light under which known paints look most like what was seen; the misfit that stays (rms). */
export function fitOwn(
  sample: Sample,
  coefficients: LogCoefficients,
  settings = SETTINGS,
  from = { x: 1, m: settings.face.k1 },
  known?: Internal,
): { x: number; m: number; misfit: number } {
  const { root, below } = known ?? internal(sample, settings.face);
  const { k, s } = mixed(sample, coefficients);
  const squares = (x: number, m: number): number => {
    let total = 0;
    for (let o = 0; o < root.length; o++)
      for (let b = 0; b < BANDS; b++)
        total += (root[o]![b]! - seenRoot(k[b]! * x, s[b]! * x, below[o]![b]!, m, settings.face)) ** 2;
    return total;
  };
  const cost = (lnX: number, m: number): number =>
    m < 0 || Math.abs(lnX) > 2.5
      ? Number.POSITIVE_INFINITY
      : squares(Math.exp(lnX), m) / NOISE ** 2 +
        (lnX / settings.spread) ** 2 +
        ((m - settings.face.k1) / settings.gloss) ** 2;
  let at = [Math.log(from.x), from.m] as [number, number];
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
