/** Films laid one on another, and the colour that comes out. What the study calls. */
import { type Lab, type Light, toLab, toXyz, type Xyz } from './cie.ts';
import type { OpticalData } from './data.ts';
import { type Coefficients, mixInto } from './film.ts';
import { type Plate, plate } from './plate.ts';
import type { Surface } from './surface.ts';
import { lay, leaving, newStack, type Stack } from './transport.ts';
import { BANDS } from './wavelengths.ts';

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

const a = new Float64Array(BANDS);
const s = new Float64Array(BANDS);

/** A film by itself, ready to be laid on whatever lies beneath. */
export function plateOf({ pigments, thickness, coats = 1, keep = 1 }: BareFilm, out?: Plate): Plate {
  // Coats of one film are one film of their summed thickness: the equations split and join exactly.
  mixInto(
    a,
    s,
    pigments.map((p) => p.optical),
    pigments.map((p) => p.fraction),
    thickness * coats * keep,
  );
  return plate(a, s, out);
}

const work = plate(a, s);

/** The stack after `film` is laid on `below`, which is left as it is; `out` receives it where given (it may be `below`). */
export const layOn = (film: BareFilm, below: Stack, out: Stack = newStack()): Stack =>
  lay(plateOf(film, work), below, out);

/** Lays films bottom to top; returns the stack after the last. */
export function layAll(films: readonly BareFilm[], below: Stack): Stack {
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

/** The colour of a stack seen through `face` under `light` (D65 unless said), 2°. */
export function toColour(stack: Stack, face: Surface, light: Light = 'D65'): Colour {
  leaving(stack, face, seen);
  const xyz = toXyz(seen, light);
  return { lab: toLab(xyz, light), xyz };
}
