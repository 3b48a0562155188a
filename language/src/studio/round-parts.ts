/** Shares as small whole parts that a knife can lay side by side. Pure numbers. */

/** No share of a mixture is off by more than this part of itself: about what an eye halving heaps gets wrong (from memory). */
export const WITHIN = 0.1;

/** Greatest relative error of the shares that whole parts give. */
export function errorOf(parts: readonly number[], wanted: readonly number[]): number {
  const [all, whole] = [sum(parts), sum(wanted)];
  return parts.reduce((worst, n, i) => Math.max(worst, Math.abs((n / all / wanted[i]!) * whole - 1)), 0);
}

const sum = (list: readonly number[]): number => list.reduce((a, b) => a + b, 0);
const HAIR = 1e-9;

/** The smallest whole parts whose shares keep within `WITHIN` of the wanted ones, which are above 0. */
export function roundParts(wanted: readonly number[]): readonly number[] {
  const whole = sum(wanted);
  // From here on a part rounded to the nearest whole is near enough whatever the shares, so the loop ends.
  const least = Math.min(...wanted) / whole;
  const enough = Math.ceil((wanted.length + 1) / (least * WITHIN));
  const first = Math.max(wanted.length, Math.floor(0.8 / least));
  for (let n = first; n < enough; n++) {
    const parts = wanted.map((w) => Math.max(1, Math.round((w / whole) * n)));
    if (errorOf(parts, wanted) <= WITHIN + HAIR) return parts;
  }
  return wanted.map((w) => Math.round((w / whole) * enough));
}

/** Amounts as written, where they are whole or become so by halves or tenths: `1.5 : 1` is 3 : 2. */
export function wholeParts(written: readonly number[]): readonly number[] | undefined {
  for (const times of [1, 2, 4, 5, 10]) {
    const parts = written.map((w) => w * times);
    if (parts.every((p) => p > 0 && Math.abs(p - Math.round(p)) < HAIR * times)) return parts.map(Math.round);
  }
  return undefined;
}

/** A strong colour taken down first: 1 part of it into `of` parts of another, both by their place in the list. */
export interface LetDownOf {
  readonly strong: number;
  readonly into: number;
  readonly of: number;
}

/** Below this share of the heap a part is hard to divide off; a let-down makes it at least `EASY`. */
export const SMALL = 1 / 20;
const EASY = 0.1;
/** Times the mean strength of the heap from which a small share rules its colour. */
const RULES = 5;
const STEPS = [10, 20, 50, 100, 200, 500, 1000] as const;

/**
 * Which colours to let down first, and into what: those whose share is small and whose strength (any one unit) rules
 * the heap, each into the largest of the rest. Shares add up to 1.
 */
export function letDownsFor(
  shares: readonly number[],
  strengths: readonly (number | undefined)[],
): readonly LetDownOf[] {
  const mean = shares.reduce((all, share, i) => all + share * (strengths[i] ?? 0), 0);
  const strong = shares.flatMap((share, i) =>
    share < SMALL && (strengths[i] ?? 0) >= RULES * mean ? [i] : [],
  );
  const into = shares.reduce((most, share, i) => (share > shares[most]! ? i : most), 0);
  let left = shares[into] ?? 0;
  const found: LetDownOf[] = [];
  for (const i of strong) {
    const share = shares[i]!;
    const of = STEPS.find((n) => share * (n + 1) >= EASY);
    if (i === into || of === undefined) continue;
    const rest = left - share * of;
    // all of the base may go into let-downs; a crumb of it left over could not be measured either
    if (rest < SMALL && Math.abs(rest) > HAIR) continue;
    left = rest;
    found.push({ strong: i, into, of });
  }
  return found;
}

/** The parts that remain to be laid together when the let-downs are ready: by the list's places, a let-down in its strong colour's. */
export function partsTogether(shares: readonly number[], letDowns: readonly LetDownOf[]): readonly number[] {
  const then = [...shares];
  for (const { strong, into, of } of letDowns) {
    then[strong] = shares[strong]! * (of + 1);
    then[into] = then[into]! - shares[strong]! * of;
  }
  const parts = roundParts(then.filter((share) => share > HAIR));
  let next = 0;
  return then.map((share) => (share > HAIR ? parts[next++]! : 0));
}
