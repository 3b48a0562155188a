import type { Interval } from '../materials/interval.ts';
import type { Pigment } from '../materials/types.ts';

/** A dried film, per coat, and the paint it comes from. */
export interface Composition {
  /** Dry-film volume fractions; they sum with `binders` to 1 at the likely values. */
  readonly pigments: readonly {
    readonly pigment: Pigment;
    readonly volumeFraction: Interval;
    readonly massFraction: Interval;
  }[];
  /** Dry-film volume fractions of non-volatile binder by kind. */
  readonly binders: readonly { readonly binder: string; readonly volumeFraction: Interval }[];
  /** Share of the applied (wet) volume that evaporates, by solvent. */
  readonly volatiles: readonly { readonly solvent: string; readonly volumeFraction: Interval }[];
  readonly pvc: Interval;
  /** the same of the paint alone, without what was wiped on before it */
  readonly paintPvc: Interval;
  readonly cpvc: Interval;
  /** PVC / CPVC */
  readonly lambda: Interval;
  /** 1 − Λ: 0 just bound, 1 pure binder, below 0 underbound */
  readonly fatness: Interval;
  readonly volumeSolids: Interval;
  /** µm per coat */
  readonly wetFilm: Interval;
  readonly dryFilm: Interval;
  /** µm of that which stayed of an oiling out or the like before the coat */
  readonly residue: Interval;
  /** applied volume share of the medium, and the non-volatile share within that medium */
  readonly mediumShare: Interval;
  readonly mediumSolids: number;
  /** g/ml of the applied paint, likely */
  readonly wetDensity: Interval;
  /** applied volume shares by paint name and medium, for quantities (sum 1) */
  readonly applied: readonly {
    readonly what: 'paint' | 'medium';
    readonly name: string;
    readonly share: number;
  }[];
}
