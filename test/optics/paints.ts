/** Paint films as the facts and the invariants speak of them: tube paint, tints in titanium white, glazes, masstones. */
import { MIDDLE, paste } from '../../language/src/film/paste.ts';
import { allPigments, binder, solvent } from '../../language/src/materials/catalogue.ts';
import type { Pigment } from '../../language/src/materials/types.ts';
import { type Lab, toLab, toXyz } from '../../language/src/optics/cie.ts';
import { opticalData } from '../../language/src/optics/data.ts';
import { groundOf } from '../../language/src/optics/spectrum.ts';
import { layOn } from '../../language/src/optics/stack.ts';
import { GLOSS } from '../../language/src/optics/surface.ts';
import { lambert, leaving, type Stack } from '../../language/src/optics/transport.ts';
import { flat, type Spectrum } from '../../language/src/optics/wavelengths.ts';

export type Share = readonly [id: string, fraction: number];

const pigments = new Map(allPigments().map((p) => [p.id, p]));

export function pigment(id: string): Pigment {
  const found = pigments.get(id);
  if (!found) throw new Error(`no pigment ${id} in the catalogue`);
  return found;
}

/** Volume of pigment over volume of the dry film, of the pigment in linseed oil as it comes from a tube. */
export function tube(id: string): number {
  const made = paste(
    { name: '', pigments: [{ pigment: pigment(id), mass: 1 }], binder: binder('linseed')! },
    MIDDLE,
    solvent,
  )!;
  const { volume } = made.pigments[0]!;
  return volume / (volume + made.binder);
}

/** Tube paint thinned with a clear medium that stays in the film: `paint` of it by volume, 0 to 1. */
export const thinned = (id: string, paint = 1): readonly Share[] => [[id, paint * tube(id)]];

/** One part by volume of tube paint to `white` parts of titanium white from the tube. */
export const tint = (id: string, white: number): readonly Share[] => [
  [id, tube(id) / (1 + white)],
  ['PW6', (white * tube('PW6')) / (1 + white)],
];

export const BLACK: Stack = lambert(flat(0));
/** A painter's white ground. */
export const WHITE: Stack = groundOf([95, 0, 2], GLOSS);

/** The stack after a film of these pigments, `thickness` µm dry. */
export const film = (shares: readonly Share[], thickness: number, below: Stack): Stack =>
  layOn(
    { pigments: shares.map(([id, fraction]) => ({ optical: opticalData(id)!, fraction })), thickness },
    below,
  );

/** Reflectance in air under a glossy face, mirrored light left out. */
export const seen = (stack: Stack): Spectrum => leaving(stack, GLOSS);
export const lab = (stack: Stack): Lab => toLab(toXyz(seen(stack)));
export const chroma = ([, a, b]: Lab): number => Math.hypot(a, b);
/** Degrees, 0 to 360. */
export const hue = ([, a, b]: Lab): number => (Math.atan2(b, a) * (180 / Math.PI) + 360) % 360;

/** A film nothing shows through, µm. */
export const THICK = 2000;
