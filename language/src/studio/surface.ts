/** How much surface a layer covers and how much wet paint one coat of it takes. */
import { combine, type Interval, scale } from '../materials/interval.ts';
import type { Layer, Plan } from '../plan/plan.ts';
import type { LayerStudy, Study } from '../results/study.ts';
import { WASTE } from './settings.ts';

/** What the studio's estimates read of a study: all of it that is there before they are. */
export type Studied = Pick<Study, 'plan' | 'layers' | 'areas'>;

const CM2_PER_M2 = 1e4;

/** m² of the support; undefined where the plan names no size, or none that is above 0. */
export function supportArea(plan: Plan): Interval | undefined {
  const { height, width } = plan.support ?? {};
  if (!height || !width) return undefined;
  const area = combine(height.value, width.value, (h, w) => (h * w) / CM2_PER_M2);
  return area.low > 0 && Number.isFinite(area.high) ? area : undefined;
}

/** Fraction of the support under a layer. Areas that add up to more than the whole count as the whole. */
export function layerShare(study: Studied, layer: Layer): number {
  if (layer.everywhere) return 1;
  const on = new Set(layer.areas);
  let share = 0;
  for (const area of study.areas) if (on.has(area.name) && area.share > 0) share += area.share;
  return Math.min(1, share);
}

/** ml of wet paint that one coat takes, waste included: 1 µm over 1 m² is 1 ml. */
export function coatVolume(study: Studied, layer: LayerStudy, support: Interval): Interval | undefined {
  const wet = layer.composition?.wetFilm;
  if (!wet) return undefined;
  const surface = scale(support, layerShare(study, layer.layer) * (1 + WASTE));
  const volume = combine(surface, wet, (m2, film) => m2 * film);
  return Number.isFinite(volume.high) && volume.low >= 0 ? volume : undefined;
}
