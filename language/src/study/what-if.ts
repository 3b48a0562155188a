/** What a layer would be if it were written otherwise: for fixes that must try before they propose. */
import type { Interval } from '../materials/interval.ts';
import type { Layer } from '../plan/plan.ts';
import type { ColourOn, Composition, Drying, Study } from '../results/study.ts';
import { after, createColourMemo, view } from './chain.ts';
import { dried } from './drying.ts';
import { filmOfLayer } from './film.ts';
import { type Lay, layOf, layPlan, wantedFace } from './lay.ts';

/** Composition of a layer, whether or not it stands in a plan. */
export const compositionOf = (layer: Layer): Composition | undefined =>
  filmOfLayer(layer, 'plan').composition;

/** Drying of a layer in a plan, whether or not it stands there. Temperature in °C. */
export const dryingOf = (layer: Layer, temperature: Interval): Drying | undefined =>
  dried({
    material: layer.material?.is,
    resin: layer.resin?.is,
    film: filmOfLayer(layer, 'plan'),
    temperature,
  }).drying;

/**
 * What a layer does to the light, whether or not it stands in the plan. `wanted`: through which face, where that is told;
 * `likelyOnly`: nothing is asked of how far it may be off.
 */
export const layWith = (
  study: Study,
  layer: Layer,
  wanted?: Parameters<typeof layPlan>[2],
  likelyOnly = false,
): Lay =>
  layOf(
    layPlan(
      layer,
      filmOfLayer(layer, study.plan.kind, likelyOnly),
      wanted,
      (own) => study.calibration(own).data,
    ),
  );

/**
 * The colour of an area if `layer` lay on it in place of the plan's layer of the same index. Undefined where nothing can
 * be predicted.
 */
export function colourWith(study: Study, layer: Layer, area: string): ColourOn | undefined {
  const { plan } = study;
  const memo = createColourMemo();
  const lay = layWith(study, layer, wantedFace(plan));
  const wiped = layer.wipeOut.some((w) => w.areas.includes(area));
  const state = after(memo, study.beneath(area, layer.index), lay, wiped);
  if (!state) return undefined;
  const { lab, radius, screen } = view(memo, state, plan.studio.lightSource?.value ?? 'D65');
  const { hex, outOfGamut } = screen();
  return { area, lab, hex, outOfGamut, radius, confidence: state.confidence, basis: state.basis };
}
