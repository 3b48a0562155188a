/** From proportions to whole painter's parts, 1 to 20 each. */
import type { Lab } from './cie.ts';
import { deltaE00Of } from './difference.ts';
import type { Mixer } from './match-film.ts';

export const MOST_PARTS = 20;

export const gcd = (a: number, b: number): number => (b === 0 ? a : gcd(b, a % b));

export interface Rounded {
  readonly parts: readonly number[];
  readonly lab: Lab;
  readonly deltaE00: number;
}

/** How many of the candidates that look best along the slope are really mixed. */
const TRIED = 16;

/**
 * The whole parts nearest the target around the proportions exp(`logParts`): for every size of the largest part, all
 * roundings up and down, ranked by the colour's slope there, the best of them mixed. Among equals (0.005 ΔE00) the
 * smallest numbers win.
 */
export function wholeParts(
  mixer: Mixer,
  subset: readonly number[],
  logParts: Float64Array,
  target: Lab,
  metric: Float64Array,
): Rounded {
  const n = subset.length;
  const lab = new Float64Array(3);
  const jacobian = new Float64Array(3 * n);
  mixer.evaluate(subset, logParts, lab, jacobian);
  const [l0, a0, b0] = [lab[0]! - target[0], lab[1]! - target[1], lab[2]! - target[2]];
  const top = Math.max(...logParts.subarray(0, n));
  const candidates = new Map<string, { parts: number[]; guess: number }>();
  const guess = (parts: readonly number[]): number => {
    let [l, a, b] = [l0, a0, b0];
    const largest = Math.log(Math.max(...parts));
    for (let i = 0; i < n; i++) {
      const step = Math.log(parts[i]!) - largest - (logParts[i]! - top);
      l += jacobian[3 * i]! * step;
      a += jacobian[3 * i + 1]! * step;
      b += jacobian[3 * i + 2]! * step;
    }
    return (metric[0]! * l) ** 2 + (metric[4]! * a + metric[5]! * b) ** 2 + (metric[8]! * b) ** 2;
  };
  for (let largest = 1; largest <= MOST_PARTS; largest++)
    for (let mask = 0; mask < 1 << n; mask++) {
      const parts = Array.from({ length: n }, (_, i) => {
        const exact = largest * Math.exp(logParts[i]! - top);
        return Math.min(MOST_PARTS, Math.max(1, Math.floor(exact) + ((mask >> i) & 1)));
      });
      const common = parts.reduce(gcd);
      const least = parts.map((v) => v / common);
      const key = least.join(':');
      if (!candidates.has(key)) candidates.set(key, { parts: least, guess: guess(least) });
    }
  const ranked = [...candidates.values()]
    .sort((p, q) => p.guess - q.guess || sum(p.parts) - sum(q.parts))
    .slice(0, TRIED);

  const logs = new Float64Array(n);
  const mix = (parts: readonly number[]): Rounded => {
    for (let i = 0; i < n; i++) logs[i] = Math.log(parts[i]!);
    mixer.evaluate(subset, logs, lab);
    return {
      parts,
      lab: [lab[0]!, lab[1]!, lab[2]!],
      deltaE00: deltaE00Of(target[0], target[1], target[2], lab[0]!, lab[1]!, lab[2]!),
    };
  };
  const better = (one: Rounded, two: Rounded): boolean =>
    one.deltaE00 < two.deltaE00 - 0.005 ||
    (one.deltaE00 <= two.deltaE00 + 0.005 && sum(one.parts) < sum(two.parts));
  let best = mix(ranked[0]!.parts);
  for (const { parts } of ranked.slice(1)) {
    const made = mix(parts);
    if (better(made, best)) best = made;
  }
  return best;
}

/** Single parts more or less, then two at once, for as long as they help. */
export function polished(mixer: Mixer, subset: readonly number[], from: Rounded, target: Lab): Rounded {
  const n = subset.length;
  const lab = new Float64Array(3);
  const logs = new Float64Array(n);
  let best = from;
  const consider = (parts: readonly number[]): void => {
    if (parts.some((v) => v < 1 || v > MOST_PARTS)) return;
    for (let i = 0; i < n; i++) logs[i] = Math.log(parts[i]!);
    mixer.evaluate(subset, logs, lab);
    const off = deltaE00Of(target[0], target[1], target[2], lab[0]!, lab[1]!, lab[2]!);
    if (off < best.deltaE00 - 0.005) best = { parts, lab: [lab[0]!, lab[1]!, lab[2]!], deltaE00: off };
  };
  for (let round = 0; round < 30; round++) {
    const { parts } = best;
    const before = best;
    for (let i = 0; i < n; i++)
      for (const step of [1, -1]) {
        const single = parts.map((v, k) => (k === i ? v + step : v));
        consider(single);
        for (let j = i + 1; j < n; j++)
          for (const other of [1, -1]) consider(single.map((v, k) => (k === j ? v + other : v)));
      }
    if (best === before) break;
  }
  const common = best.parts.reduce(gcd);
  return common > 1 ? { ...best, parts: best.parts.map((v) => v / common) } : best;
}

const sum = (values: readonly number[]): number => values.reduce((s, v) => s + v, 0);
