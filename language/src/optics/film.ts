/**
 * One paint film over what lies beneath it: the closed solution of Kubelka and Munk (Z. techn. Physik 12 (1931) 593;
 * Kubelka, JOSA 38 (1948) 448) in a form that neither overflows nor divides by S. With k = KX, s = SX,
 * z = √(k(k+2s)) and q = tanh(z)/z:
 *
 *     R = (Rg + q(s − (k+s)Rg)) / (1 + q(k + s − s·Rg))
 *
 * q runs smoothly from 1 (z = 0) to 1/z (opaque), so the limits need no cases of their own: S → 0 gives Rg·exp(−2k),
 * K → 0 gives (Rg + s(1−Rg))/(1 + s(1−Rg)), X → 0 gives Rg, X → ∞ gives R∞. All reflectances are internal (inside the
 * paint, interface left out) and diffuse, 0 to 1.
 */
import { BANDS, type Spectrum } from './wavelengths.ts';

/** Beyond this K·X or S·X a film is opaque whatever else; the bound keeps squares finite. */
const MOST = 1e8;

/** tanh(z)/z, 1 at z = 0. */
export const tanhOver = (z: number): number => {
  const zz = z * z;
  if (z < 0.03) return 1 - zz / 3 + (2 * zz * zz) / 15 - (17 * zz * zz * zz) / 315;
  if (z > 20) return 1 / z;
  const e = Math.exp(-2 * z);
  return (1 - e) / ((1 + e) * z);
};

/**
 * Internal reflectance of a film with absorption `kx` = K·X and scattering `sx` = S·X (no unit, ≥ 0) over a substrate
 * of internal reflectance `rg`, 0 to 1. Never NaN: values out of range are moved to the nearest that are in it.
 */
export function filmReflectance(kx: number, sx: number, rg: number): number {
  const k = kx > 0 ? Math.min(kx, MOST) : 0;
  const s = sx > 0 ? Math.min(sx, MOST) : 0;
  const g = rg > 0 ? Math.min(rg, 1) : 0;
  const t = tanhOver(Math.sqrt(k * (k + 2 * s)));
  const r = (g + t * (s - (k + s) * g)) / (1 + t * (k + s - s * g));
  return r > 0 ? Math.min(r, 1) : 0;
}

/** Lays a film on an internal reflectance, band by band, in place: `internal` becomes that of the film over it. */
export function filmOver(kx: Spectrum, sx: Spectrum, internal: Spectrum): void {
  for (let i = 0; i < BANDS; i++) internal[i] = filmReflectance(kx[i]!, sx[i]!, internal[i]!);
}

/** Reflectance of an endless film, R∞ = 1 + K/S − √((K/S)² + 2K/S), written so that S = 0 is no special case. */
export function opaqueReflectance(k: number, s: number): number {
  if (!(k > 0)) return s > 0 ? 1 : 0;
  if (!(s > 0)) return 0;
  return s / (k + s + Math.sqrt(k * (k + 2 * s)));
}

/** K and S of a pigment per µm of the pure material. */
export interface Coefficients {
  readonly k: Spectrum;
  readonly s: Spectrum;
}

/**
 * Two-constant mixing (Duncan, Proc. Phys. Soc. 52 (1940) 390): K and S add by volume. Writes K·X and S·X of a film of
 * `thickness` µm, dry, holding `fractions` (volume of each pigment over volume of the dry film; what remains to 1 is
 * binder, taken as clear) into `kx` and `sx`.
 */
export function mixInto(
  kx: Spectrum,
  sx: Spectrum,
  pigments: readonly Coefficients[],
  fractions: ArrayLike<number>,
  thickness: number,
): void {
  kx.fill(0);
  sx.fill(0);
  for (let p = 0; p < pigments.length; p++) {
    const { k, s } = pigments[p]!;
    const x = fractions[p]! * thickness;
    if (!(x > 0)) continue;
    for (let i = 0; i < BANDS; i++) {
      kx[i]! += k[i]! * x;
      sx[i]! += s[i]! * x;
    }
  }
}
