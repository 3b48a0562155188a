/**
 * The paint's upper face, where part of the light turns back before it enters and part of it cannot leave. For a ground
 * that scatters evenly this is Saunderson's correction (JOSA 32 (1942) 727); it turns measured reflectances of such
 * grounds into internal ones, and back. Films over them go through `transport.ts`, where the face is met once, on top.
 */
import { BANDS, type Spectrum } from './wavelengths.ts';

export interface Surface {
  /** share of the light turned back at the face, coming from the air at 8° */
  readonly k1: number;
  /** share of diffuse light turned back into the film, from inside */
  readonly k2: number;
  /**
   * Whether the mirrored light is counted: yes for a matt or sunk-in surface, which spreads it over every direction,
   * and for instruments with the gloss trap closed; no for a glossy or varnished one seen beside its reflections.
   */
  readonly specular: boolean;
}

/** Refractive index of a dry linseed oil film, young (rises to about 1.57 with age; from memory). */
export const OIL_INDEX = 1.5;

/** Sine of the angle, in air, at which light meets the painting: 8° from the perpendicular, as in instruments (CIE 15). */
export const ENTERS = Math.sin((8 * Math.PI) / 180);

/** Unpolarised Fresnel reflectance inside a medium of refractive index `n` against air, by the cosine inside. */
export function fresnel(mu: number, n = OIL_INDEX): number {
  const sine = n * Math.sqrt(1 - mu * mu);
  if (sine >= 1) return 1;
  const out = Math.sqrt(1 - sine * sine);
  const across = (n * mu - out) / (n * mu + out);
  const along = (n * out - mu) / (n * out + mu);
  return (across * across + along * along) / 2;
}

/** Share of light falling at 8° that the face of a medium of refractive index `n` mirrors; the same from either side. */
export const mirroredShare = (n: number): number => fresnel(Math.sqrt(1 - (ENTERS / n) ** 2), n);

/**
 * Fresnel reflectance of diffuse light inside a medium of refractive index `n` against air: the closed form for
 * diffuse light from outside (Walsh 1926; Duntley, JOSA 32 (1942) 61), carried inside by the factor n².
 */
export function diffuseInternalReflectance(n: number): number {
  if (Math.abs(n - 1) < 1e-6) return 0;
  const n2 = n * n;
  const outside =
    0.5 +
    ((n - 1) * (3 * n + 1)) / (6 * (n + 1) ** 2) +
    ((n2 * (n2 - 1) ** 2) / (n2 + 1) ** 3) * Math.log((n - 1) / (n + 1)) -
    (2 * n ** 3 * (n2 + 2 * n - 1)) / ((n2 + 1) * (n ** 4 - 1)) +
    ((8 * n ** 4 * (n ** 4 + 1)) / ((n2 + 1) * (n ** 4 - 1) ** 2)) * Math.log(n);
  return 1 - (1 - outside) / n2;
}

/** The face of a medium of refractive index `n` (1 to about 3). */
export const surface = (specular: boolean, n = OIL_INDEX): Surface => ({
  k1: mirroredShare(n),
  k2: diffuseInternalReflectance(n),
  specular,
});

/**
 * `face` for a surface that is known by how it looks: no band can be darker than the light mirrored at the face, so where
 * one is, that much less of it was seen.
 */
export function faceShowing(seen: Spectrum, face: Surface): Surface {
  if (!face.specular) return face;
  const darkest = seen.reduce((least, r) => Math.min(least, r), face.k1);
  return darkest < face.k1 ? { ...face, k1: Math.max(0, darkest) } : face;
}

/** Oil-rich or varnished: mirrored light is looked past. */
export const GLOSS: Surface = surface(false);
/** Matt or sunk-in: mirrored light is spread over the colour and lightens it. */
export const MATT: Surface = surface(true);

/** Internal reflectance to that seen in air. */
export function outward(internal: number, face: Surface): number {
  const { k1, k2 } = face;
  return (face.specular ? k1 : 0) + ((1 - k1) * (1 - k2) * internal) / (1 - k2 * internal);
}

/** Reflectance seen in air to the internal one; what no paint could show is moved to the nearest of 0 and 1. */
export function inward(seen: number, face: Surface): number {
  const m = seen - (face.specular ? face.k1 : 0);
  const r = m / ((1 - face.k1) * (1 - face.k2) + face.k2 * m);
  return r > 0 ? Math.min(r, 1) : 0;
}

/** `outward` for every band, into `seen`. */
export function outwardInto(seen: Spectrum, internal: Spectrum, face: Surface): void {
  for (let i = 0; i < BANDS; i++) seen[i] = outward(internal[i]!, face);
}

/** `inward` for every band, into `internal`. */
export function inwardInto(internal: Spectrum, seen: Spectrum, face: Surface): void {
  for (let i = 0; i < BANDS; i++) internal[i] = inward(seen[i]!, face);
}
