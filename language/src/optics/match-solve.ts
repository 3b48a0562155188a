/**
 * The proportions of one set of paints that come nearest a target: damped least squares on the logarithms of the parts,
 * inside the box that parts of 1 to 20 span, in a metric that agrees with CIEDE2000 around the target.
 */
import type { Lab } from './cie.ts';
import { deltaE00Of } from './difference.ts';
import type { Mixer } from './match-film.ts';

/** ln of the least proportion that whole parts of 1 to 20 can write. */
export const LEAST_LOG = -Math.log(20);

/** Rows turn a small ΔLab at the target into lightness, chroma and hue steps of CIEDE2000 whose squares sum to ΔE00². */
export function metricAt(target: Lab): Float64Array {
  const out = new Float64Array(9);
  const h = 0.05;
  const [l, a, b] = target;
  const square = (dl: number, da: number, db: number): number =>
    deltaE00Of(l, a, b, l + dl, a + da, b + db) ** 2 / (h * h);
  // The Hessian of ΔE00² in Lab by differences, then its Cholesky root.
  const ll = square(h, 0, 0);
  const aa = (square(0, h, 0) + square(0, -h, 0)) / 2;
  const bb = (square(0, 0, h) + square(0, 0, -h)) / 2;
  const both = (square(0, h, h) + square(0, -h, -h)) / 2;
  const ab = (both - aa - bb) / 2;
  out[0] = Math.sqrt(ll);
  out[4] = Math.sqrt(aa);
  out[5] = ab / out[4]!;
  out[8] = Math.sqrt(Math.max(1e-4, bb - out[5]! ** 2));
  return out;
}

export interface Solver {
  /** Moves `logParts` to the nearest proportions found from there; returns ΔE00. */
  solve(subset: readonly number[], logParts: Float64Array): number;
}

const ROUNDS = 14;

/** `metric` as of `metricAt`; `most` paints in a set. */
export function createSolver(mixer: Mixer, target: Lab, metric: Float64Array, most: number): Solver {
  const lab = new Float64Array(3);
  const jacobian = new Float64Array(3 * most);
  const a = new Float64Array(most * most);
  const rhs = new Float64Array(most);
  const next = new Float64Array(most);
  const rows = new Float64Array(3 * most);
  const residual = new Float64Array(3);
  const free = new Uint8Array(most);

  const missed = (): number => {
    const dl = lab[0]! - target[0];
    const da = lab[1]! - target[1];
    const db = lab[2]! - target[2];
    residual[0] = metric[0]! * dl;
    residual[1] = metric[4]! * da + metric[5]! * db;
    residual[2] = metric[8]! * db;
    return residual[0]! ** 2 + residual[1]! ** 2 + residual[2]! ** 2;
  };

  return {
    solve(subset, logParts) {
      const n = subset.length;
      mixer.evaluate(subset, logParts, lab, jacobian);
      let cost = missed();
      let damping = 0.01;
      for (let round = 0; round < ROUNDS && cost > 1e-5; round++) {
        for (let i = 0; i < n; i++) {
          rows[3 * i] = metric[0]! * jacobian[3 * i]!;
          rows[3 * i + 1] = metric[4]! * jacobian[3 * i + 1]! + metric[5]! * jacobian[3 * i + 2]!;
          rows[3 * i + 2] = metric[8]! * jacobian[3 * i + 2]!;
        }
        let gain = 0;
        for (let i = 0; i < n; i++) {
          const g =
            rows[3 * i]! * residual[0]! + rows[3 * i + 1]! * residual[1]! + rows[3 * i + 2]! * residual[2]!;
          rhs[i] = -g;
          const pushed = (logParts[i]! <= LEAST_LOG && g > 0) || (logParts[i]! >= 0 && g < 0);
          free[i] = pushed ? 0 : 1;
          if (!pushed) gain += Math.abs(g);
        }
        if (gain < 1e-6) break;
        let moved = false;
        for (let attempt = 0; attempt < 5 && !moved; attempt++) {
          for (let i = 0; i < n; i++)
            for (let j = 0; j <= i; j++) {
              let v = 0;
              if (free[i] && free[j])
                v =
                  rows[3 * i]! * rows[3 * j]! +
                  rows[3 * i + 1]! * rows[3 * j + 1]! +
                  rows[3 * i + 2]! * rows[3 * j + 2]!;
              // The common factor of all parts changes nothing, so a floor keeps the system regular.
              if (i === j) v = free[i] ? v * (1 + damping) + damping * 0.1 + 1e-6 : 1;
              a[i * n + j] = v;
            }
          cholesky(a, rhs, next, n, free);
          let largest = 0;
          for (let i = 0; i < n; i++) largest = Math.max(largest, Math.abs(next[i]!));
          const scale = largest > 1.5 ? 1.5 / largest : 1;
          for (let i = 0; i < n; i++)
            next[i] = Math.min(0, Math.max(LEAST_LOG, logParts[i]! + scale * next[i]!));
          mixer.evaluate(subset, next, lab);
          const there = missed();
          if (there < cost) {
            moved = true;
            const fall = cost - there;
            for (let i = 0; i < n; i++) logParts[i] = next[i]!;
            damping = Math.max(1e-6, damping / 8);
            cost = there;
            if (fall < 1e-4 * cost) round = ROUNDS;
          } else damping = Math.min(1e6, damping * 8);
        }
        mixer.evaluate(subset, logParts, lab, jacobian);
        missed();
        if (!moved) break;
      }
      return deltaE00Of(target[0], target[1], target[2], lab[0]!, lab[1]!, lab[2]!);
    },
  };
}

/** Solves the lower-triangular symmetric system in place; frozen unknowns do not move. */
function cholesky(a: Float64Array, rhs: Float64Array, out: Float64Array, n: number, free: Uint8Array): void {
  for (let i = 0; i < n; i++) {
    for (let j = 0; j <= i; j++) {
      let v = a[i * n + j]!;
      for (let k = 0; k < j; k++) v -= a[i * n + k]! * a[j * n + k]!;
      a[i * n + j] = i === j ? Math.sqrt(Math.max(1e-18, v)) : v / a[j * n + j]!;
    }
  }
  for (let i = 0; i < n; i++) {
    let v = free[i] ? rhs[i]! : 0;
    for (let k = 0; k < i; k++) v -= a[i * n + k]! * out[k]!;
    out[i] = v / a[i * n + i]!;
  }
  for (let i = n - 1; i >= 0; i--) {
    let v = out[i]!;
    for (let k = i + 1; k < n; k++) v -= a[k * n + i]! * out[k]!;
    out[i] = v / a[i * n + i]!;
  }
}
