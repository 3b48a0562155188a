/** What a paint film does to light, from what lies in it. */
import type { Spectrum } from './wavelengths.ts';
import { BANDS } from './wavelengths.ts';

/** Absorption and (reduced, isotropic) scattering coefficients of a pigment per µm of the pure material. */
export interface Coefficients {
  readonly a: Spectrum;
  readonly s: Spectrum;
}

/**
 * Coefficients add by volume (Duncan, Proc. Phys. Soc. 52 (1940) 390). Writes absorption × thickness and scattering ×
 * thickness (no unit) of a film of `thickness` µm, dry, holding `fractions` (volume of each pigment over volume of the
 * dry film; what remains to 1 is binder, taken as clear) into `a` and `s`.
 */
export function mixInto(
  a: Spectrum,
  s: Spectrum,
  pigments: readonly Coefficients[],
  fractions: ArrayLike<number>,
  thickness: number,
): void {
  a.fill(0);
  s.fill(0);
  for (let p = 0; p < pigments.length; p++) {
    const of = pigments[p]!;
    const x = fractions[p]! * thickness;
    if (!(x > 0)) continue;
    for (let i = 0; i < BANDS; i++) {
      a[i]! += of.a[i]! * x;
      s[i]! += of.s[i]! * x;
    }
  }
}

const strengths = new WeakMap<Coefficients, number>();

/** How much a pigment does to light: absorption and scattering per µm, on the average of the bands. */
export function strengthOf(pigment: Coefficients): number {
  let strength = strengths.get(pigment);
  if (strength === undefined) {
    strength = pigment.a.reduce((sum, v, b) => sum + (v + pigment.s[b]!) / BANDS, 0);
    strengths.set(pigment, strength);
  }
  return strength;
}
