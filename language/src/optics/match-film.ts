/**
 * The inner loop of matching: colour of a mixture and how it answers to each paint's share. Everything lies in flat
 * arrays made once; an evaluation allocates nothing.
 */
import { type Light, labRoot, lightOf } from './cie.ts';
import { type Coefficients, tanhOver } from './film.ts';
import type { Surface } from './surface.ts';
import { BANDS, type Spectrum } from './wavelengths.ts';

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
  /** rough strength of each paint: mean of K and a fifth of S, per µm of dry film */
  readonly strength: Float64Array;
}

const ROOT_FOOT = 216 / 24389;
const rootSlope = (t: number): number => (t > ROOT_FOOT ? 1 / (3 * Math.cbrt(t) ** 2) : 24389 / 3132);

/** A mixer over a fixed film: `thickness` µm, dry, laid on `below` (internal) and seen through `face` under `light`. */
export function createMixer(
  paints: readonly Paint[],
  medium: Medium | undefined,
  thickness: number,
  below: Spectrum,
  face: Surface,
  light: Light = 'D65',
): Mixer {
  const n = paints.length;
  const share = Math.min(0.99, Math.max(0, medium?.share ?? 0));
  const kd = new Float64Array(n * BANDS);
  const sd = new Float64Array(n * BANDS);
  const dry = new Float64Array(n);
  const strength = new Float64Array(n);
  paints.forEach((paint, p) => {
    // A part of paint brings its own dry volume and that of the medium stirred into it.
    dry[p] = Math.max(1e-6, (1 - share) * (paint.solids ?? 1) + share * (medium?.solids ?? 1));
    for (const { optical, fraction } of paint.pigments)
      for (let b = 0; b < BANDS; b++) {
        const v = (thickness * (1 - share) * Math.max(0, fraction)) / dry[p]!;
        kd[p * BANDS + b]! += v * optical.k[b]!;
        sd[p * BANDS + b]! += v * optical.s[b]!;
      }
    for (let b = 0; b < BANDS; b++)
      strength[p]! += (kd[p * BANDS + b]! + 0.2 * sd[p * BANDS + b]!) / BANDS / Math.max(1e-9, thickness);
  });

  const { x: wx, y: wy, z: wz, white } = lightOf(light);
  const { k1, k2, specular } = face;
  const through = (1 - k1) * (1 - k2);
  const shareOf = new Float64Array(n);
  const ck = new Float64Array(3 * BANDS);
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
        let k = 0;
        let s = 0;
        for (let i = 0; i < m; i++) {
          const at = subset[i]! * BANDS + b;
          k += shareOf[i]! * kd[at]!;
          s += shareOf[i]! * sd[at]!;
        }
        const g = below[b]!;
        const zz = k * (k + 2 * s);
        const q = tanhOver(Math.sqrt(zz));
        const up = s - (k + s) * g;
        const down = k + s - s * g;
        const d = 1 + q * down;
        const r = (g + q * up) / d;
        const out = 1 - k2 * r;
        const seen = (specular ? k1 : 0) + (through * r) / out;
        X += wx[b]! * seen;
        Y += wy[b]! * seen;
        Z += wz[b]! * seen;
        if (!jacobian) continue;
        // q = tanh(z)/z, so dq/d(z²) is (1 − q − q²z²)/(2z²), near −1/3 for thin films.
        const bend = zz < 1e-4 ? -2 / 3 + (8 / 15) * zz : (1 - q - q * q * zz) / zz;
        const qk = bend * (k + s);
        const qs = bend * k;
        const rk = (qk * up - q * g - r * (qk * down + q)) / d;
        const rs = (qs * up + q * (1 - g) - r * (qs * down + q * (1 - g))) / d;
        const slope = through / (out * out);
        ck[b] = wx[b]! * slope * rk;
        cs[b] = wx[b]! * slope * rs;
        ck[BANDS + b] = wy[b]! * slope * rk;
        cs[BANDS + b] = wy[b]! * slope * rs;
        ck[2 * BANDS + b] = wz[b]! * slope * rk;
        cs[2 * BANDS + b] = wz[b]! * slope * rs;
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
            sum += ck[c * BANDS + b]! * kd[at + b]! + cs[c * BANDS + b]! * sd[at + b]!;
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
