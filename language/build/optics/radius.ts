/** How far off a colour is to be expected, from how far off others were: the stated share of them lies within it. */

/** Share of measured colours that should lie within the printed radius. */
export const WITHIN = 0.68;

/** The smallest difference that `WITHIN` of all given ones do not exceed; between two, in proportion. */
export function expectedOff(differences: readonly number[], share = WITHIN): number {
  const sorted = [...differences].sort((a, b) => a - b);
  if (sorted.length === 0) return 0;
  const at = share * (sorted.length - 1);
  const below = Math.floor(at);
  return sorted[below]! + (at - below) * ((sorted[below + 1] ?? sorted[below]!) - sorted[below]!);
}
