/** Free proportions and loads of open layers, brought nearest to what is wanted: damped least squares. */
import { LEAST_LOG, type Search, type State } from './match-layers-search.ts';

const ROUNDS = 12;

export interface Solved {
  readonly sets: readonly (readonly number[])[];
  readonly x: Float64Array;
  readonly off: number;
}

/** Variables: for each layer the logs of its parts and, last, how far its load lies between its least and greatest (log). */
export function statesOf(search: Search, sets: readonly (readonly number[])[], x: Float64Array): State[] {
  let at = 0;
  return sets.map((set, layer) => {
    const from = at;
    at += set.length + 1;
    return stateOf(search, layer, set, x, from);
  });
}

function stateOf(
  search: Search,
  layer: number,
  set: readonly number[],
  x: Float64Array,
  from: number,
): State {
  const weights = set.map((_, i) => Math.exp(x[from + i]!));
  const [low, high] = search.range(layer, { set, weights });
  return { set, weights, load: low * (high / low) ** x[from + set.length]! };
}

function solve(search: Search, sets: readonly (readonly number[])[], start: Float64Array): Solved {
  const loads: boolean[] = [];
  const layerOf: { readonly layer: number; readonly from: number }[] = [];
  for (const [layer, set] of sets.entries()) {
    const from = loads.length;
    loads.push(...set.map(() => false), true);
    for (let i = from; i < loads.length; i++) layerOf.push({ layer, from });
  }
  const n = loads.length;
  const x = Float64Array.from(start);
  const m = search.residual.length;
  const clamp = (v: number, i: number) =>
    loads[i] ? Math.min(1, Math.max(0, v)) : Math.min(0, Math.max(LEAST_LOG, v));
  let here = statesOf(search, sets, x);
  let cost = search.look(here);
  const residual = new Float64Array(m);
  const rows = new Float64Array(n * m);
  let damping = 0.01;
  const a = new Float64Array(n * n);
  const step = new Float64Array(n);
  const next = new Float64Array(n);
  for (let round = 0; round < ROUNDS && cost > 1e-4 * m; round++) {
    residual.set(search.residual);
    for (let i = 0; i < n; i++) {
      const h = x[i]! > (loads[i] ? 0.5 : LEAST_LOG / 2) ? -0.01 : 0.01;
      const kept = x[i]!;
      x[i] = kept + h;
      const { layer, from } = layerOf[i]!;
      const nudged = stateOf(search, layer, sets[layer]!, x, from);
      search.look(here.map((state, l) => (l === layer ? nudged : state)));
      x[i] = kept;
      for (let r = 0; r < m; r++) rows[i * m + r] = (search.residual[r]! - residual[r]!) / h;
    }
    let moved = false;
    for (let attempt = 0; attempt < 4 && !moved; attempt++) {
      for (let i = 0; i < n; i++) {
        step[i] = 0;
        for (let r = 0; r < m; r++) step[i]! -= rows[i * m + r]! * residual[r]!;
        for (let j = 0; j <= i; j++) {
          let v = 0;
          for (let r = 0; r < m; r++) v += rows[i * m + r]! * rows[j * m + r]!;
          a[i * n + j] = i === j ? v * (1 + damping) + damping * 0.1 + 1e-6 : v;
        }
      }
      solveSymmetric(a, step, n);
      for (let i = 0; i < n; i++) next[i] = clamp(x[i]! + Math.max(-1.5, Math.min(1.5, step[i]!)), i);
      const then = statesOf(search, sets, next);
      const there = search.look(then);
      if (there < cost) {
        moved = true;
        here = then;
        if (cost - there < 1e-3 * cost) round = ROUNDS;
        cost = there;
        x.set(next);
        damping = Math.max(1e-6, damping / 8);
      } else damping *= 8;
    }
    if (!moved) break;
  }
  search.look(here);
  return { sets, x, off: search.off() };
}

/** Cholesky, in place: lower triangle of `a`, right side and answer in `b`. */
function solveSymmetric(a: Float64Array, b: Float64Array, n: number): void {
  for (let i = 0; i < n; i++)
    for (let j = 0; j <= i; j++) {
      let v = a[i * n + j]!;
      for (let k = 0; k < j; k++) v -= a[i * n + k]! * a[j * n + k]!;
      a[i * n + j] = i === j ? Math.sqrt(Math.max(1e-18, v)) : v / a[j * n + j]!;
    }
  for (let i = 0; i < n; i++) {
    for (let k = 0; k < i; k++) b[i]! -= a[i * n + k]! * b[k]!;
    b[i]! /= a[i * n + i]!;
  }
  for (let i = n - 1; i >= 0; i--) {
    for (let k = i + 1; k < n; k++) b[i]! -= a[k * n + i]! * b[k]!;
    b[i]! /= a[i * n + i]!;
  }
}

/** The best of a few beginnings: loads low and high, proportions that count alike and leaning to the first paint. */
export function solveSets(search: Search, sets: readonly (readonly number[])[]): Solved {
  let best: Solved | undefined;
  for (const [lean, load] of [
    [0, 0.4],
    [1, 0.8],
    [0, 0.1],
  ] as const) {
    const x = sets.flatMap((set, layer) => {
      const even = search.even(layer, set);
      const top = Math.max(...even.map((v, i) => v - (i > 0 ? lean : 0)));
      return [...even.map((v, i) => Math.max(LEAST_LOG, v - (i > 0 ? lean : 0) - top)), load];
    });
    const solved = solve(search, sets, Float64Array.from(x));
    if (!best || solved.off < best.off) best = solved;
    if (best.off < 0.3) break;
  }
  return best!;
}
