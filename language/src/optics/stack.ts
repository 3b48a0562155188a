/** Films laid one on another, and the colour that comes out. What the study calls. */
import { type Lab, type Light, toLab, toXyz, type Xyz } from './cie.ts';
import type { OpticalData } from './data.ts';
import { type Coefficients, filmOver, mixInto } from './film.ts';
import { outwardInto, type Surface } from './surface.ts';
import { BANDS, type Spectrum } from './wavelengths.ts';

export interface FilmPigment {
  readonly optical: OpticalData;
  /** volume of the pigment over volume of the dry film, 0 to 1 */
  readonly fraction: number;
}

export interface Film {
  readonly pigments: readonly FilmPigment[];
  /** µm, dry, one coat */
  readonly thickness: number;
  /** laid one after another; 1 unless said */
  readonly coats?: number;
  /** share of the film that stays where it is wiped out; 1 unless said */
  readonly keep?: number;
}

/** A film whose data need not say how far they may be trusted. */
export type BareFilm = Omit<Film, 'pigments'> & {
  readonly pigments: readonly { readonly optical: Coefficients; readonly fraction: number }[];
};

/** What stays of a film wiped out while it is open: a quarter (assumption). */
export const WIPED_OUT_KEEPS = 0.25;

const kx = new Float64Array(BANDS);
const sx = new Float64Array(BANDS);

/**
 * Internal reflectance after `film` is laid on `below` (internal). `below` is left as it is; `out` receives the result
 * where given (it may be `below` itself).
 */
export function layOn(film: BareFilm, below: Spectrum, out: Spectrum = new Float64Array(BANDS)): Spectrum {
  if (out !== below) out.set(below);
  // Coats of one film are one film of their summed thickness: the equations split and join exactly.
  const x = film.thickness * (film.coats ?? 1) * (film.keep ?? 1);
  if (!(x > 0)) return out;
  mixInto(
    kx,
    sx,
    film.pigments.map((p) => p.optical),
    film.pigments.map((p) => p.fraction),
    x,
  );
  filmOver(kx, sx, out);
  return out;
}

/** Lays films bottom to top; returns the internal reflectance after the last. */
export function layAll(films: readonly Film[], below: Spectrum): Spectrum {
  const out = Float64Array.from(below);
  for (const film of films) layOn(film, out, out);
  return out;
}

export interface Colour {
  /** relative to the white of the light it is judged under */
  readonly lab: Lab;
  readonly xyz: Xyz;
}

const seen = new Float64Array(BANDS);

/** The colour of an internal reflectance seen through `face` under `light` (D65 unless said), 2°. */
export function toColour(internal: Spectrum, face: Surface, light: Light = 'D65'): Colour {
  outwardInto(seen, internal, face);
  const xyz = toXyz(seen, light);
  return { lab: toLab(xyz, light), xyz };
}
