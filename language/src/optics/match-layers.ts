/**
 * From wanted colours back to the layers: which proportions, how much medium and how many coats the open layers of a
 * stack must have, together, so that one or several areas come nearest their colours. Paint sets are tried in turn; each
 * is solved with free proportions and loads by damped least squares, then brought to parts, shares and coats a painter
 * can measure. No randomness: the same question has the same answer.
 */
import type { Lab } from './cie.ts';
import { shown } from './css.ts';
import { deltaE00 } from './difference.ts';
import { madeState, measure, product } from './match-layers-measure.ts';
import { createSearch, type LayersRequest, type Search } from './match-layers-search.ts';
import { type Solved, solveSets } from './match-layers-solve.ts';

export type { LayersRequest, OpenArea, OpenLayer } from './match-layers-search.ts';

/** What an open layer is to be made of. */
export interface MadeLayer {
  readonly parts: readonly { readonly paint: string; readonly parts: number }[];
  /** share of the medium, 0 to 1 */
  readonly share: number;
  readonly coats: number;
}

export interface Way {
  /** in the order of `open` */
  readonly layers: readonly MadeLayer[];
  /** in the order of `areas` */
  readonly areas: readonly {
    readonly lab: Lab;
    readonly hex: string;
    readonly outOfGamut: boolean;
    readonly deltaE00: number;
    /** share (of Y) of the light that leaves which has come back from beneath the glazes: from the lowest open layer and what it lies on, where there are several, from beneath the only one otherwise */
    readonly glow: number;
  }[];
  /** greatest ΔE00 to what is promised, on any area, where the films of the open layers come out 30 % thinner or thicker */
  readonly slip: number;
}

/** Films of one name may come out so much thinner or thicker under a brush (assumption). */
const UNEVEN = 0.3;
/** Up to so many combinations of paint sets all are tried; of more, one layer's sets at a time. */
const MOST_COMBINATIONS = 400;

/** Every combination of paint sets where they are few; else one layer's at a time from the best so far, until none helps. */
function solveAll(search: Search): Solved[] {
  const { open, stop } = search;
  const all = new Map<string, Solved>();
  const take = (sets: readonly (readonly number[])[]): Solved => {
    const key = sets.map((s) => s.join()).join(';');
    const known = all.get(key) ?? solveSets(search, sets);
    all.set(key, known);
    return known;
  };
  if (open.reduce((n, o) => n * o.sets.length, 1) <= MOST_COMBINATIONS) {
    for (const sets of product(open.map((o) => o.sets))) {
      if (stop()) break;
      take(sets);
    }
    return [...all.values()];
  }
  let best = take(open.map((o) => o.sets[0]!));
  for (let helped = true; helped; ) {
    helped = false;
    for (let layer = 0; layer < open.length; layer++) {
      const from = best.sets;
      for (const set of open[layer]!.sets) {
        if (stop()) return [...all.values()];
        const next = take(from.map((s, l) => (l === layer ? set : s)));
        if (next.off < best.off - 0.01) {
          best = next;
          helped = true;
        }
      }
    }
  }
  return [...all.values()];
}

/** Ways to make the open layers, nearest first. Empty where an open layer has no paints. */
export function matchLayers(request: LayersRequest): Way[] {
  const { open, areas, ways = 12 } = request;
  if (open.length === 0 || areas.length === 0 || open.some((o) => o.sets.length === 0)) return [];
  const search = createSearch(request);
  const solved = solveAll(search).sort((a, b) => a.off - b.off);
  const measured = solved
    .slice(0, ways)
    .map((s) => ({ sets: s.sets, ...measure(search, s) }))
    .sort((a, b) => a.off - b.off);
  return measured.map(({ sets, made }): Way => {
    const states = made.map((m, layer) => madeState(search, layer, sets[layer]!, m));
    search.look(states);
    const labs = [...search.labs];
    const glows = areas.map((area) => search.glow(area));
    let slip = 0;
    for (const by of [1 - UNEVEN, 1 + UNEVEN]) {
      search.look(states, by);
      labs.forEach((lab, i) => {
        slip = Math.max(slip, deltaE00(lab, search.labs[i]!));
      });
    }
    return {
      layers: made.map((m, layer) => ({
        parts: sets[layer]!.map((p, i) => ({ paint: open[layer]!.paints[p]!.name, parts: m.parts[i]! })),
        share: open[layer]!.shares[m.share]!,
        coats: m.coats,
      })),
      areas: labs.map((lab, i) => ({
        lab,
        ...shown(lab),
        deltaE00: deltaE00(areas[i]!.target, lab),
        glow: glows[i]!,
      })),
      slip,
    };
  });
}
