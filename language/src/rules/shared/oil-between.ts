/** Oil that lies between two layers of paint: oilOuts out, wipes with a medium, layers of medium alone. */
import { RESIDUE } from '../../film/residue.ts';
import type { BinderKind } from '../../materials/types.ts';
import type { Layer, Preparation } from '../../plan/plan.ts';
import type { LayerStudy, Study } from '../../results/study.ts';
import { staysOf } from '../../studio/residue.ts';
import { filmOf, nextBelow } from './beneath.ts';
import { isMediumAlone, isOilFilm } from './films.ts';

const OILY: readonly BinderKind[] = ['drying oil', 'semi-drying oil', 'alkyd'];

/** Preparations of a layer that leave oil, whatever their method is called. */
export const oilOuts = (layer: Layer): readonly Preparation[] =>
  layer.prepare.filter((p) => staysOf(p, (b) => OILY.includes(b.kind)) > 0);

/** µm of what several wipes leave before one coat, likely. */
export const residueOf = (list: readonly Preparation[]): number =>
  list.reduce((um, p) => um + RESIDUE.likely * staysOf(p), 0);

export const isBareOil = (l: LayerStudy | undefined): l is LayerStudy =>
  l !== undefined &&
  isMediumAlone(l.layer) &&
  l.layer.kind !== 'varnish' &&
  l.layer.kind !== 'size' &&
  isOilFilm(l);

/** Layers of bare oil right beneath one, down to the first paint, on the area where they are thickest. */
export function bareOilBeneath(study: Study, layer: LayerStudy): readonly LayerStudy[] {
  let most: readonly LayerStudy[] = [];
  const um = (list: readonly LayerStudy[]) => list.reduce((sum, l) => sum + filmOf(l), 0);
  for (const area of layer.areas) {
    const here: LayerStudy[] = [];
    let below = nextBelow(study, layer, area);
    while (isBareOil(below)) {
      here.push(below);
      below = nextBelow(study, below, area);
    }
    if (um(here) > um(most)) most = here;
  }
  return most;
}

/** Coats right beneath a layer that lie on a fresh oiling out each, without one in between that does not; the most of any area. */
export function oiledCoatsBeneath(study: Study, layer: LayerStudy, enough: number): number {
  let most = 0;
  for (const area of layer.areas) {
    let coats = 0;
    let below = nextBelow(study, layer, area);
    while (below && coats < enough && oilOuts(below.layer).length > 0) {
      coats += below.coats;
      below = nextBelow(study, below, area);
    }
    most = Math.max(most, coats);
  }
  return most;
}
