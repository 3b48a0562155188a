/** How far off a colour is to be expected, from how far off others were: the stated share of them lies within it. */

/** Share of measured colours that should lie within the printed radius. */
export const WITHIN = 0.68;

/**
 * The difference that `share` of further ones will not exceed, if they are of the kind of the given ones: that share's
 * quantile of n + 1, between two in proportion (as in conformal prediction: Vovk, Gammerman & Shafer 2005).
 */
export function expectedOff(differences: readonly number[], share = WITHIN): number {
  const sorted = [...differences].sort((a, b) => a - b);
  const last = sorted.length - 1;
  if (last < 0) return 0;
  const at = Math.min(last, Math.max(0, share * (sorted.length + 1) - 1));
  const below = Math.floor(at);
  return sorted[below]! + (at - below) * (sorted[Math.min(last, below + 1)]! - sorted[below]!);
}

/** Films of other paints that count beside a paint's own few. */
const OTHERS = 6;

/** `expectedOff` of a paint: its own differences, drawn towards all of them where there are few. */
export const expectedOffOf = (own: readonly number[], all: readonly number[]): number =>
  (own.length * expectedOff(own) + OTHERS * expectedOff(all)) / (own.length + OTHERS);
