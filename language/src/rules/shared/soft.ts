/** Films that are not firm yet when something is laid on them. Days. */
import type { Interval } from '../../materials/interval.ts';
import type { Layer } from '../../plan/plan.ts';
import type { Drying, LayerStudy, Study } from '../../results/study.ts';
import type { FilmStudy } from './beneath.ts';
import { daysBetween } from './laid.ts';

export interface Soft<Upper extends LayerStudy> {
  readonly upper: Upper;
  readonly below: FilmStudy;
  readonly area: string;
  /** from the last coat of the one below */
  readonly days: number;
  readonly firm: Interval;
}

type Lower = FilmStudy & { readonly drying: Drying };

/** Days a film likely still lacks to be firm when another is laid. */
function lacking(study: Study, below: Lower, upper: Layer): number {
  const days = daysBetween(study, below.layer, upper);
  const left = days === undefined ? 0 : below.drying.firm.likely - days;
  return left > 1e-6 ? left : 0;
}

/** For each layer the film beneath it that lacks most. Films once firm are not looked at again. */
export function* softest<Upper extends LayerStudy>(
  study: Study,
  isUpper: (l: LayerStudy) => l is Upper,
  isLower: (l: LayerStudy) => l is Lower,
  counts: (below: Lower, upper: Upper) => boolean = () => true,
): Generator<Soft<Upper>> {
  // most plans have no such layer, and then nothing is kept
  if (!study.layers.some(isUpper)) return;
  const soft = new Map<string, Lower[]>();
  for (const upper of study.layers) {
    if (isUpper(upper)) {
      let worst: Soft<Upper> | undefined;
      let most = 0;
      for (const area of upper.areas) {
        const still: Lower[] = [];
        for (const below of soft.get(area) ?? []) {
          const lack = lacking(study, below, upper.layer);
          if (lack > 0) still.push(below);
          if (lack <= most || !counts(below, upper)) continue;
          most = lack;
          const { firm } = below.drying;
          worst = { upper, below, area, days: firm.likely - lack, firm };
        }
        soft.set(area, still);
      }
      if (worst) yield worst;
    }
    if (isLower(upper))
      for (const area of upper.areas) {
        const below = soft.get(area);
        if (below) below.push(upper);
        else soft.set(area, [upper]);
      }
  }
}
