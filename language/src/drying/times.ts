import type { Interval } from '../materials/interval.ts';

/** Days after application, at the plan's temperature, per coat. */
export interface Drying {
  readonly open: Interval;
  readonly touchDry: Interval;
  readonly ready: Interval;
  /** no later than `REACH`: beyond ten years these figures do not reach */
  readonly firm: Interval;
  /** when another coat of the same layer may follow, where that is sooner than `ready` */
  readonly nextCoat?: Interval;
  /** recalibrated by a `dry` observation of this or an earlier layer of the same paint and medium */
  readonly observed?: { readonly layer: string; readonly days: number };
}
