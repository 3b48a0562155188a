/** Optical data of a painter's own pigments: the catalogue's, moved by the swatches they measured. */
import { MIDDLE, paste } from '../film/paste.ts';
import { binder, solvent } from '../materials/catalogue.ts';
import type { Pigment } from '../materials/types.ts';
import type { Placeless } from '../memory/key.ts';
import type { Memo } from '../memory/memo.ts';
import { parseColour } from '../optics/css.ts';
import { type OpticalData, opticalData } from '../optics/data.ts';
import type { Coefficients } from '../optics/film.ts';
import type { Surface } from '../optics/surface.ts';
import { type Calibration, calibrate, type SwatchColour, type WhitePaint } from '../optics/swatches.ts';
import type { Ingredient, OwnPigment, Swatch } from '../plan/plan.ts';
import { colourOf } from './recipe.ts';

export type { Calibration } from '../optics/swatches.ts';

/** Pigment over dry volume of a tube of it in linseed oil: what swatches are taken to be made with. */
function tubeFraction(pigment: Pigment): number {
  const linseed = binder('linseed');
  const made =
    linseed && paste({ name: '', pigments: [{ pigment, mass: 1 }], binder: linseed }, MIDDLE, solvent);
  const volume = made?.pigments[0]?.volume ?? 0;
  return made && volume > 0 ? volume / (volume + made.binder) : 0;
}

/** The white of a tint, as one pigment. Undefined where it has no optical data. */
function whiteOf(ingredient: Ingredient): WhitePaint | undefined {
  const { place } = ingredient;
  const white = colourOf({ parts: [{ ingredient, place }], amounts: 'none', place });
  if (!white) return undefined;
  const found: { readonly optical: Coefficients; readonly fraction: number }[] = [];
  let dry = 0;
  for (const share of white.pastes) {
    const made = paste(share.paste, MIDDLE, solvent);
    if (!made) return undefined;
    dry += share.volume * made.binder;
    for (const [i, { pigment }] of share.paste.pigments.entries()) {
      const volume = share.volume * (made.pigments[i]?.volume ?? 0);
      dry += volume;
      const optical = opticalData(pigment.id);
      if (!optical) return undefined;
      found.push({ optical, fraction: volume });
    }
  }
  const pigment = found.reduce((sum, f) => sum + f.fraction, 0);
  if (!(pigment > 0)) return undefined;
  const mean = (of: 'a' | 's') =>
    found[0]!.optical[of].map((_, band) =>
      found.reduce((sum, f) => sum + (f.fraction * f.optical[of][band]!) / pigment, 0),
    );
  return { optical: { a: mean('a'), s: mean('s') }, fraction: pigment / dry };
}

function swatchColour({ kind, colour, tint, film }: Swatch): SwatchColour[] {
  const lab = parseColour(colour.css);
  if (!lab) return [];
  if (kind === 'masstone') return [{ kind, lab }];
  if (kind === 'tint') {
    const white = tint && whiteOf(tint.white);
    return white && tint.parts > 0 ? [{ kind, lab, parts: tint.parts, white }] : [];
  }
  return film && film.value.likely > 0 ? [{ kind, lab, thickness: film.value.likely }] : [];
}

interface Swatched {
  readonly prior?: OpticalData;
  /** pigment over dry volume of the paint the swatches are of */
  readonly fraction: number;
  readonly colours: readonly SwatchColour[];
  readonly seen?: Surface;
}

const fromSwatches = ({ prior, fraction, colours, seen }: Placeless<Swatched>): Calibration =>
  calibrate(prior, fraction, colours, seen);

/** What the swatches of a pigment make of the data of the one it is like. `seen`: the plan's geometry, where it states one. */
export function calibrated(own: OwnPigment, memo: Memo<Calibration>, seen: Surface | undefined): Calibration {
  const like = own.like?.is.kind === 'pigment' ? own.like.is.pigment : undefined;
  const pigment = own.pigment ?? like;
  return memo.get<Swatched>(
    {
      prior: like && opticalData(like.id),
      fraction: pigment ? tubeFraction(pigment) : 0,
      colours: own.swatches.flatMap(swatchColour),
      seen,
    },
    fromSwatches,
  );
}
