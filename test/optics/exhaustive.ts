/** The reference matching is held against: every recipe of whole parts 1 to 20 there is, mixed once, then searched. */
import { deltaE00Of } from '../../language/src/optics/difference.ts';
import { createMixer, type Paint } from '../../language/src/optics/match-film.ts';
import type { Surface } from '../../language/src/optics/surface.ts';
import type { Stack } from '../../language/src/optics/transport.ts';

const gcd = (a: number, b: number): number => (b === 0 ? a : gcd(b, a % b));

/** CIELAB of every recipe of up to `most` paints, three numbers each; proportions with a common factor once. */
export function everyRecipe(
  paints: readonly Paint[],
  thickness: number,
  below: Stack,
  face: Surface,
  most: number,
): Float32Array {
  const mixer = createMixer(paints, undefined, thickness, below, face);
  const lab = new Float64Array(3);
  const out: Float32Array[] = [];
  const choose = (from: number, chosen: number[]): void => {
    if (chosen.length > 0) out.push(recipes(chosen));
    if (chosen.length < most) for (let p = from; p < paints.length; p++) choose(p + 1, [...chosen, p]);
  };
  const recipes = (subset: readonly number[]): Float32Array => {
    const n = subset.length;
    const logs = new Float64Array(n);
    const parts = new Array<number>(n).fill(1);
    const found: number[] = [];
    const turn = (i: number, common: number): void => {
      if (i === n) {
        if (common > 1) return;
        for (let j = 0; j < n; j++) logs[j] = Math.log(parts[j]!);
        mixer.evaluate(subset, logs, lab);
        found.push(lab[0]!, lab[1]!, lab[2]!);
        return;
      }
      for (let v = 1; v <= 20; v++) {
        parts[i] = v;
        turn(i + 1, i === 0 ? v : gcd(common, v));
      }
    };
    turn(0, 1);
    return Float32Array.from(found);
  };
  choose(0, []);
  const whole = new Float32Array(out.reduce((sum, a) => sum + a.length, 0));
  let at = 0;
  for (const a of out) {
    whole.set(a, at);
    at += a.length;
  }
  return whole;
}

/** Least ΔE00 between a target and any of the recipes. */
export function leastDifference(labs: Float32Array, target: readonly [number, number, number]): number {
  let best = Number.POSITIVE_INFINITY;
  const [l, a, b] = target;
  for (let i = 0; i < labs.length; i += 3) {
    // Lightness alone never counts more than fully and rarely less than a third: a bound that spares most of the work.
    if (Math.abs(labs[i]! - l) > 1.9 * best) continue;
    best = Math.min(best, deltaE00Of(l, a, b, labs[i]!, labs[i + 1]!, labs[i + 2]!));
  }
  return best;
}

/** A small generator with a seed, so that every run asks the same questions (Numerical Recipes' constants). */
export function seeded(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
}
