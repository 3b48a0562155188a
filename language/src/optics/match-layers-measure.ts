/** From free proportions and loads to what a painter can measure: whole parts, shares of medium by steps, coats. */

import { MOST_PARTS, type OpenLayer, type Search, type State } from './match-layers-search.ts';
import { type Solved, statesOf } from './match-layers-solve.ts';
import { gcd } from './match-parts.ts';

/** Whole parts nearest some proportions, smallest numbers first where they serve as well. */
function partsNear(weights: readonly number[]): number[] {
  if (weights.length === 1) return [1];
  const top = Math.max(...weights);
  let best: { parts: number[]; off: number } | undefined;
  for (let largest = 1; largest <= MOST_PARTS; largest++) {
    const parts = weights.map((w) => Math.max(1, Math.round((largest * w) / top)));
    if (parts.reduce(gcd) > 1) continue;
    const scale = Math.max(...parts);
    const off =
      Math.max(...weights.map((w, i) => Math.abs(Math.log(w / top) - Math.log(parts[i]! / scale)))) +
      0.01 * largest;
    if (!best || off < best.off) best = { parts, off };
  }
  return best!.parts;
}

/** A layer in measures a painter has: whole parts, an index into the shares, coats. */
interface Measured {
  readonly parts: readonly number[];
  readonly share: number;
  readonly coats: number;
}

interface Tried {
  readonly made: readonly Measured[];
  readonly off: number;
}

export function madeState(search: Search, layer: number, set: readonly number[], m: Measured): State {
  const state = { set, weights: m.parts };
  return { ...state, load: search.load(layer, state, search.open[layer]!.shares[m.share]!, m.coats) };
}

/** Of the roundings, so many are bettered step by step. */
const BEGINNINGS = 3;

export function measure(search: Search, { sets, x }: Solved): Tried {
  const { open } = search;
  const kept = new Map<string, State>();
  const keep = (m: Measured, layer: number): State => {
    const key = `${layer} ${m.parts.join(':')} ${m.share} ${m.coats}`;
    let state = kept.get(key);
    if (!state) {
      state = madeState(search, layer, sets[layer]!, m);
      kept.set(key, state);
      search.keep(layer, state);
    }
    return state;
  };
  const tried = new Map<string, number>();
  const value = (made: readonly Measured[]): number => {
    const key = made.map((m) => `${m.parts.join(':')},${m.share},${m.coats}`).join(';');
    let off = tried.get(key);
    if (off === undefined) {
      search.look(made.map(keep));
      off = search.off();
      tried.set(key, off);
    }
    return off;
  };
  const states = statesOf(search, sets, x);
  // for every number of coats the two shares that bring the load nearest
  const starts = (layer: number): Measured[] => {
    const { set, weights, load } = states[layer]!;
    const parts = partsNear(weights);
    const { shares, coats } = open[layer]!;
    return Array.from({ length: coats }, (_, i) => {
      const gap = (share: number) =>
        Math.abs(Math.log(search.load(layer, { set, weights: parts }, shares[share]!, i + 1) / load));
      return [...shares.keys()]
        .sort((a, b) => gap(a) - gap(b) || a - b)
        .slice(0, 2)
        .map((share): Measured => ({ parts, share, coats: i + 1 }));
    }).flat();
  };
  const descended = (from: readonly Measured[]): Tried => {
    let best: Tried = { made: from, off: value(from) };
    for (let round = 0; round < 12; round++) {
      const { made, off } = best;
      const steps = made.flatMap((m, layer) => neighbours(m, open[layer]!).map((to) => ({ layer, to })));
      const consider = (next: readonly Measured[]) => {
        const there = value(next);
        if (there < best.off - 0.005) best = { made: next, off: there };
      };
      for (const one of steps) {
        const single = made.map((m, l) => (l === one.layer ? one.to : m));
        consider(single);
        for (const two of steps)
          if (two.layer > one.layer) consider(single.map((m, l) => (l === two.layer ? two.to : m)));
      }
      if (best.off === off) break;
    }
    return best;
  };
  return [...product(sets.map((_, layer) => starts(layer)))]
    .map((made): Tried => ({ made, off: value(made) }))
    .sort((a, b) => a.off - b.off)
    .slice(0, BEGINNINGS)
    .map(({ made }) => descended(made))
    .reduce((best, next) => (next.off < best.off - 0.005 ? next : best));
}

/** Steps of one part: by one, and by so many times. */
const STRIDES = [1, -1, 1.5, 0.67, 2, 0.5];

/** One measure of a layer changed a little: coats and share, or one part. */
function neighbours(m: Measured, { coats, shares }: OpenLayer): Measured[] {
  const out: Measured[] = [];
  for (let c = Math.max(1, m.coats - 1); c <= Math.min(coats, m.coats + 1); c++)
    for (let share = Math.max(0, m.share - 3); share <= Math.min(shares.length - 1, m.share + 3); share++)
      if (c !== m.coats || share !== m.share) out.push({ ...m, share, coats: c });
  if (m.parts.length === 1) return out;
  for (let i = 0; i < m.parts.length; i++)
    for (const by of STRIDES) {
      const part = by === 1 || by === -1 ? m.parts[i]! + by : m.parts[i]! * by;
      if (part <= 0) continue;
      const parts = partsNear(m.parts.map((v, k) => (k === i ? part : v)));
      if (parts.join() !== m.parts.join()) out.push({ ...m, parts });
    }
  return out;
}

export function* product<T>(lists: readonly (readonly T[])[]): Generator<T[]> {
  if (lists.length === 0) yield [];
  else for (const first of lists[0]!) for (const rest of product(lists.slice(1))) yield [first, ...rest];
}
