/**
 * The inner loop of matching: colour of a mixture and how it answers to each paint's share. What a film of the paints at
 * hand can look like in a band is tabled once over the logarithms of absorption and scattering, since a mixture lies
 * between its paints; an evaluation reads the table and allocates nothing.
 */
import { type Light, labRoot, lightOf } from './cie.ts';
import type { Coefficients } from './film.ts';
import { type FilmTable, filmTable } from './film-table.ts';
import type { Surface } from './surface.ts';
import type { Stack } from './transport.ts';
import { BANDS } from './wavelengths.ts';

export interface Paint {
  readonly name: string;
  /** volume of each pigment over the volume of the paint as applied */
  readonly pigments: readonly { readonly optical: Coefficients; readonly fraction: number }[];
  /** dry volume over applied volume (binder and pigments); 1 unless said */
  readonly solids?: number;
}

export interface Medium {
  /** share of the applied volume, 0 up to (not including) 1 */
  readonly share: number;
  /** dry volume over applied volume of the medium; 1 unless said */
  readonly solids?: number;
}

export interface Mixer {
  readonly count: number;
  /**
   * CIELAB of the mixture of `subset` (indices of paints) in proportions exp(`logParts`) by applied volume, into `lab`.
   * With `jacobian` also ∂Lab/∂logPart, three numbers a paint of the subset.
   */
  evaluate(
    subset: readonly number[],
    logParts: Float64Array,
    lab: Float64Array,
    jacobian?: Float64Array,
  ): void;
  /** rough strength of each paint: mean of absorption and a tenth of scattering, per µm of dry film */
  readonly strength: Float64Array;
}

const ROOT_FOOT = 216 / 24389;
const rootSlope = (t: number): number => (t > ROOT_FOOT ? 1 / (3 * Math.cbrt(t) ** 2) : 24389 / 3132);

/** A mixer over a fixed film: `thickness` µm, dry, laid on `below` and seen through `face` under `light`. */
export function createMixer(
  paints: readonly Paint[],
  medium: Medium | undefined,
  thickness: number,
  below: Stack,
  face: Surface,
  light: Light = 'D65',
): Mixer {
  const n = paints.length;
  const share = Math.min(0.99, Math.max(0, medium?.share ?? 0));
  const ad = new Float64Array(n * BANDS);
  const sd = new Float64Array(n * BANDS);
  const dry = new Float64Array(n);
  const strength = new Float64Array(n);
  paints.forEach((paint, p) => {
    // A part of paint brings its own dry volume and that of the medium stirred into it.
    dry[p] = Math.max(1e-6, (1 - share) * (paint.solids ?? 1) + share * (medium?.solids ?? 1));
    for (const { optical, fraction } of paint.pigments)
      for (let b = 0; b < BANDS; b++) {
        const v = (thickness * (1 - share) * Math.max(0, fraction)) / dry[p]!;
        ad[p * BANDS + b]! += v * optical.a[b]!;
        sd[p * BANDS + b]! += v * optical.s[b]!;
      }
    for (let b = 0; b < BANDS; b++)
      strength[p]! += (ad[p * BANDS + b]! + 0.1 * sd[p * BANDS + b]!) / BANDS / Math.max(1e-9, thickness);
  });

  const { x: wx, y: wy, z: wz, white } = lightOf(light);
  const mirrored = face.specular ? face.k1 : 0;
  const tables: FilmTable[] = Array.from({ length: BANDS }, (_, b) => {
    const of = (all: Float64Array) => Array.from({ length: n }, (__, p) => all[p * BANDS + b]!);
    return filmTable(of(ad), of(sd), below, b);
  });
  const shareOf = new Float64Array(n);
  const ca = new Float64Array(3 * BANDS);
  const cs = new Float64Array(3 * BANDS);
  const raw = new Float64Array(3 * n);
  const mean = new Float64Array(3);

  return {
    count: n,
    strength,
    evaluate(subset, logParts, lab, jacobian) {
      const m = subset.length;
      let whole = 0;
      for (let i = 0; i < m; i++) {
        const v = Math.exp(logParts[i]!) * dry[subset[i]!]!;
        shareOf[i] = v;
        whole += v;
      }
      for (let i = 0; i < m; i++) shareOf[i]! /= whole;
      let X = 0;
      let Y = 0;
      let Z = 0;
      for (let b = 0; b < BANDS; b++) {
        let a = 0;
        let s = 0;
        for (let i = 0; i < m; i++) {
          const at = subset[i]! * BANDS + b;
          a += shareOf[i]! * ad[at]!;
          s += shareOf[i]! * sd[at]!;
        }
        const film = tables[b]!;
        const seen = mirrored + film.read(a, s, jacobian !== undefined);
        X += wx[b]! * seen;
        Y += wy[b]! * seen;
        Z += wz[b]! * seen;
        if (!jacobian) continue;
        const { byA, byS } = film;
        ca[b] = wx[b]! * byA;
        cs[b] = wx[b]! * byS;
        ca[BANDS + b] = wy[b]! * byA;
        cs[BANDS + b] = wy[b]! * byS;
        ca[2 * BANDS + b] = wz[b]! * byA;
        cs[2 * BANDS + b] = wz[b]! * byS;
      }
      const tx = X / white[0];
      const ty = Y / white[1];
      const tz = Z / white[2];
      const fx = labRoot(tx);
      const fy = labRoot(ty);
      const fz = labRoot(tz);
      lab[0] = 116 * fy - 16;
      lab[1] = 500 * (fx - fy);
      lab[2] = 200 * (fy - fz);
      if (!jacobian) return;
      mean.fill(0);
      for (let i = 0; i < m; i++)
        for (let c = 0; c < 3; c++) {
          let sum = 0;
          const at = subset[i]! * BANDS;
          for (let b = 0; b < BANDS; b++)
            sum += ca[c * BANDS + b]! * ad[at + b]! + cs[c * BANDS + b]! * sd[at + b]!;
          raw[3 * i + c] = sum;
          mean[c]! += shareOf[i]! * sum;
        }
      const sx = rootSlope(tx) / white[0];
      const sy = rootSlope(ty) / white[1];
      const sz = rootSlope(tz) / white[2];
      for (let i = 0; i < m; i++) {
        const dx = sx * shareOf[i]! * (raw[3 * i]! - mean[0]!);
        const dy = sy * shareOf[i]! * (raw[3 * i + 1]! - mean[1]!);
        const dz = sz * shareOf[i]! * (raw[3 * i + 2]! - mean[2]!);
        jacobian[3 * i] = 116 * dy;
        jacobian[3 * i + 1] = 500 * (dx - dy);
        jacobian[3 * i + 2] = 200 * (dy - dz);
      }
    },
  };
}
