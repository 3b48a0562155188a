/** Wet volume of layers that are named by their material: sizes, grounds and the like. */
import { type Interval, scale } from '../materials/interval.ts';
import type { LayerStudy } from '../results/study.ts';
import { GROUND_SOLIDS, WASTE } from './settings.ts';
import { layerShare, type Studied } from './surface.ts';

/** ml of all coats; undefined for layers with a formula, for leaf and drawing, and where no film is known. */
export function groundVolume(
  study: Studied,
  layer: LayerStudy,
  support: Interval,
): { readonly name: string; readonly ml: Interval } | undefined {
  const { material, kind } = layer.layer;
  const dry = layer.dryFilm;
  if (layer.composition || !material?.is || !dry || kind === 'leaf' || kind === 'drawing') return undefined;
  const surface = scale(support, layerShare(study, layer.layer) * (1 + WASTE));
  const ml = {
    low: (surface.low * dry.low) / GROUND_SOLIDS.high,
    likely: (surface.likely * dry.likely) / GROUND_SOLIDS.likely,
    high: (surface.high * dry.high) / GROUND_SOLIDS.low,
  };
  return Number.isFinite(ml.high) && ml.low >= 0 ? { name: material.name, ml } : undefined;
}
