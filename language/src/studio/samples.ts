/**
 * Cross-sections of a record: do they agree with one another and with the order in which the record lists its layers,
 * and are the layers as thick as it says? Thickness in µm, of all coats together.
 */
import type { Interval } from '../materials/interval.ts';
import type { Layer, Place, Plan, Sample } from '../plan/plan.ts';
import { type Edge, order } from './cycles.ts';

type Entry = Sample['layers'][number];

/** One statement of the evidence: in `sample`, `lower` lies under `upper`. */
export interface Under extends Edge {
  readonly sample: string;
  readonly lower: string;
  readonly upper: string;
  /** of the upper layer's line in the sample */
  readonly place: Place;
}

export interface SampleConflict {
  /** `samples`: cross-sections contradict one another (or themselves); `record`: one contradicts the order of layers */
  readonly against: 'samples' | 'record';
  /** names from the bottom up, ending with the one it began with */
  readonly chain: readonly string[];
  /** the statements that make the chain, in its order; for `record` the one statement that goes against it */
  readonly evidence: readonly Under[];
}

function statements(plan: Plan): { readonly layers: readonly Layer[]; readonly edges: readonly Under[] } {
  const numbers = new Map<Layer, number>();
  const layers: Layer[] = [];
  const number = (layer: Layer): number => {
    const known = numbers.get(layer);
    if (known !== undefined) return known;
    numbers.set(layer, layers.length);
    layers.push(layer);
    return layers.length - 1;
  };
  // Numbered in the record's order, so that a statement against it is an edge to a smaller number.
  const named = new Set(plan.samples.flatMap((s) => s.layers.flatMap((e) => e.layer.is ?? [])));
  for (const layer of [...named].sort((a, b) => a.index - b.index)) number(layer);
  const edges: Under[] = [];
  for (const sample of plan.samples) {
    const known = sample.layers.filter(
      (e): e is Entry & { layer: { is: Layer } } => e.layer.is !== undefined,
    );
    for (let i = 1; i < known.length; i++) {
      const [lower, upper] = [known[i - 1]!, known[i]!];
      edges.push({
        from: number(lower.layer.is),
        to: number(upper.layer.is),
        sample: sample.name,
        lower: lower.layer.name,
        upper: upper.layer.name,
        place: upper.place,
      });
    }
  }
  return { layers, edges };
}

/** Where the cross-sections contradict one another or the record: one short chain for every knot. */
export function sampleConflicts(plan: Plan): readonly SampleConflict[] {
  const { layers, edges } = statements(plan);
  const { cycles } = order(layers.length, edges);
  const inCycle = new Set(cycles.flat());
  return [
    ...cycles.map((evidence) => ({
      against: 'samples' as const,
      chain: [...evidence.map((e) => e.lower), evidence[0]!.lower],
      evidence,
    })),
    ...edges
      .filter((e) => e.to < e.from && !inCycle.has(e))
      .map((e) => ({ against: 'record' as const, chain: [e.lower, e.upper, e.lower], evidence: [e] })),
  ];
}

/** The layers named in cross-sections, bottom to top as all of them together say. */
export function sampleSequence(plan: Plan): readonly string[] {
  const { layers, edges } = statements(plan);
  return order(layers.length, edges).sequence.map((n) => layers[n]!.name);
}

export interface ThicknessOutside {
  readonly sample: string;
  readonly layer: string;
  readonly found: Interval;
  readonly expected: Interval;
  readonly side: 'thinner' | 'thicker';
  readonly place: Place;
}

/** A film stated as one figure is an average; single places differ from it by this much (the study's film uncertainty). */
const EXACT_MEANS = 0.3;

function expectedFilm(layer: Layer): Interval | undefined {
  const { film, coats } = layer;
  if (!film || film.given === 'unknown') return undefined;
  const count = coats && coats.value.likely > 0 ? coats.value : { low: 1, likely: 1, high: 1 };
  const spread = film.given === 'exact' ? EXACT_MEANS : 0;
  return {
    low: film.value.low * (1 - spread) * count.low,
    likely: film.value.likely * count.likely,
    high: film.value.high * (1 + spread) * count.high,
  };
}

/** Layers that a cross-section shows thinner or thicker than the record has them. */
export function thicknessOutside(plan: Plan): readonly ThicknessOutside[] {
  return plan.samples.flatMap((sample) =>
    sample.layers.flatMap(({ layer, film, place }): ThicknessOutside[] => {
      const expected = layer.is && expectedFilm(layer.is);
      if (!expected || !film || film.given === 'unknown') return [];
      const measured = film.value;
      const side =
        measured.high < expected.low ? 'thinner' : measured.low > expected.high ? 'thicker' : undefined;
      return side ? [{ sample: sample.name, layer: layer.name, found: measured, expected, side, place }] : [];
    }),
  );
}
