/** What a layer would be if it were written otherwise: for fixes that must try before they propose. */
import type { Layer } from '../plan/plan.ts';
import type { ColourOn, Composition, Study } from '../results/study.ts';
import { after, createColourMemo, view } from './chain.ts';
import { filmPlan } from './film.ts';
import { layOf, wantedFace } from './lay.ts';

/** Composition of a layer, whether or not it stands in a plan. */
export const compositionOf = (layer: Layer): Composition | undefined =>
  filmPlan(layer, 'plan').compute().composition;

/**
 * The colour of an area if `layer` lay on it in place of the plan's layer of the same index. Undefined where nothing can
 * be predicted.
 */
export function colourWith(study: Study, layer: Layer, area: string): ColourOn | undefined {
  const { plan } = study;
  const memo = createColourMemo();
  const lay = layOf(
    layer,
    filmPlan(layer, plan.kind).compute(),
    wantedFace(plan),
    (own) => study.calibration(own).data,
  );
  const wiped = layer.wipeOut.some((w) => w.areas.includes(area));
  // Ids only name states within one memory; 0 is no state's of this one.
  const beneath = study.beneath(area, layer.index);
  const state = after(memo, beneath && { ...beneath, id: 0 }, { id: -1, lay }, wiped);
  if (!state) return undefined;
  const { lab, radius, screen } = view(memo, state, plan.studio.lightSource?.value ?? 'D65');
  const { hex, outOfGamut } = screen();
  return { area, lab, hex, outOfGamut, radius, confidence: state.confidence, basis: state.basis };
}
