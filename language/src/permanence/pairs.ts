/** Pairs of pigments in a painting that harm each other, in one film or from film to film. */
import type { Pigment } from '../materials/types.ts';
import type { Study } from '../results/study.ts';
import { HARMING_PAIRS, type HarmingPair } from './pairs-table.ts';
import { layerPigments } from './pigments.ts';

export interface HarmfulMeeting {
  readonly pair: HarmingPair;
  /** the first does the harm, or either does */
  readonly pigments: readonly [Pigment, Pigment];
  /** indices of the layers the two are in, in that order; the same one twice where they are mixed */
  readonly layers: readonly [number, number];
  readonly how: 'mixed' | 'touching';
}

const NONE: readonly HarmingPair[] = [];
const known = new WeakMap<Pigment, WeakMap<Pigment, readonly HarmingPair[]>>();

/** Pigments never change: each two of them are held to the table once. */
function pairsOf(a: Pigment, b: Pigment): readonly HarmingPair[] {
  let others = known.get(a);
  if (!others) {
    others = new WeakMap();
    known.set(a, others);
  }
  let pairs = others.get(b);
  if (!pairs) {
    const harming = HARMING_PAIRS.filter((p) => p.one(a) && p.other(b));
    pairs = harming.length > 0 ? harming : NONE;
    others.set(b, pairs);
  }
  return pairs;
}

/** Whether either does the other harm where they meet. */
export const harmsOrIsHarmed = (a: Pigment, b: Pigment): boolean =>
  pairsOf(a, b).length > 0 || pairsOf(b, a).length > 0;

/** Pairs among pigments of one film, or of two that touch. */
function meetings(
  from: readonly Pigment[],
  to: readonly Pigment[],
  layers: readonly [number, number],
  how: 'mixed' | 'touching',
): HarmfulMeeting[] {
  const met: HarmfulMeeting[] = [];
  for (const a of from)
    for (const b of to)
      if (a !== b)
        for (const pair of pairsOf(a, b))
          if (how === 'mixed' || pair.reach === 'touching') met.push({ pair, pigments: [a, b], layers, how });
  return met;
}

/** Every harmful meeting, layer by layer from the bottom. Films touch where one lies right on the other on some area. */
export function harmingPairs(study: Pick<Study, 'layers'>): readonly HarmfulMeeting[] {
  const pigments = study.layers.map((l) => layerPigments(l).map((p) => p.pigment));
  const all = [...new Set(pigments.flat())];
  // most palettes hold no two that do, and then no layer is looked at
  if (!HARMING_PAIRS.some((p) => all.some(p.one) && all.some(p.other))) return [];
  /** the layer on top of each area so far: what the next one there touches */
  const top = new Map<string, number>();
  return study.layers.flatMap((layer) => {
    const { index } = layer.layer;
    const here = pigments[index] ?? [];
    const meets = meetings(here, here, [index, index], 'mixed');
    const touched = new Set(layer.areas.flatMap((area) => top.get(area) ?? []));
    for (const area of layer.areas) top.set(area, index);
    for (const below of touched) {
      const there = pigments[below] ?? [];
      meets.push(
        ...meetings(here, there, [index, below], 'touching'),
        ...meetings(there, here, [below, index], 'touching'),
      );
    }
    return meets;
  });
}
