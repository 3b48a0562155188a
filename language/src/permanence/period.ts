/** Dates of use of a pigment against the years in which a painting was made. */
import type { Pigment } from '../materials/types.ts';

export interface PeriodConflict {
  /**
   * `too-early`: the painting was finished before anyone had the pigment; `perhaps-too-early`: only its later years
   * allow it; `after-use`: the pigment had gone out of use by then, which dates nothing, since old stock keeps.
   */
  readonly kind: 'too-early' | 'perhaps-too-early' | 'after-use';
  /** the year that decides it, negative before the era */
  readonly year: number;
}

/** Undefined where the dates agree or nothing is known. Years inclusive; dates of use are seldom sharp to the year. */
export function periodConflict(
  pigment: Pigment,
  made: { readonly from: number; readonly to: number },
): PeriodConflict | undefined {
  const { from, to } = pigment.used;
  if (from !== undefined && made.to < from) return { kind: 'too-early', year: from };
  if (from !== undefined && made.from < from) return { kind: 'perhaps-too-early', year: from };
  if (to !== undefined && made.from > to) return { kind: 'after-use', year: to };
  return undefined;
}
