/** Open layers over their areas, as a search looks at them: colours, loads, where to begin. */
import { type Lab, type Light, toLab, toXyz } from './cie.ts';
import { deltaE00Of } from './difference.ts';
import type { Paint } from './match-film.ts';
import { metricAt } from './match-solve.ts';
import { type Plate, plate } from './plate.ts';
import { type BareFilm, plateOf } from './stack.ts';
import type { Surface } from './surface.ts';
import { lay, leaving, newStack, type Stack } from './transport.ts';
import { BANDS } from './wavelengths.ts';

/** A layer whose make-up is sought. */
export interface OpenLayer {
  readonly paints: readonly Paint[];
  /** which of them may be mixed, by index; tried in turn */
  readonly sets: readonly (readonly number[])[];
  /** µm, dry, one coat */
  readonly film: number;
  /** coats at most */
  readonly coats: number;
  /** shares of the applied volume the medium may have, rising; `[0]` without one */
  readonly shares: readonly number[];
  /** dry volume over applied volume of the medium; 1 unless said */
  readonly solids?: number;
}

export interface OpenArea {
  /** CIELAB under the light asked for */
  readonly target: Lab;
  readonly below: Stack;
  readonly face: Surface;
  /** from below upwards: an open layer by its index, or a film that stays as it is */
  readonly layers: readonly (number | BareFilm)[];
}

export interface LayersRequest {
  readonly open: readonly OpenLayer[];
  readonly areas: readonly OpenArea[];
  readonly light?: Light;
  /** how many ways to return; 12 unless said */
  readonly ways?: number;
  /** asked between sets of paints: true stops the search with what it has */
  readonly stop?: () => boolean;
}

/** Largest part of a mixture in whole parts. */
export const MOST_PARTS = 24;
/** ln of the least proportion. */
export const LEAST_LOG = -Math.log(MOST_PARTS);
/** Plates kept at once, 5 KB each. */
const MOST_KEPT = 2000;

/** Absorption and scattering that one part of a paint, as applied, brings. */
interface Basis {
  readonly a: Float64Array;
  readonly s: Float64Array;
  readonly solids: number;
}

const basisOf = ({ pigments, solids = 1 }: Paint): Basis => {
  const a = new Float64Array(BANDS);
  const s = new Float64Array(BANDS);
  for (const { optical, fraction } of pigments)
    for (let b = 0; b < BANDS; b++) {
      a[b]! += fraction * optical.a[b]!;
      s[b]! += fraction * optical.s[b]!;
    }
  return { a, s, solids: Math.max(1e-6, solids) };
};

/** One layer as it stands in a search: proportions of its set by applied volume, and its load. */
export interface State {
  readonly set: readonly number[];
  /** any scale */
  readonly weights: readonly number[];
  /** µm of paint, as applied, that one coat or all of them bring: what the colour depends on */
  readonly load: number;
}

/** The open layers over their areas: colours, loads and where to begin. */
export type Search = ReturnType<typeof createSearch>;

export function createSearch(request: LayersRequest) {
  const { open, areas, light = 'D65' } = request;
  const bases = open.map((o) => o.paints.map(basisOf));
  const fixed = new Map<BareFilm, Plate>();
  for (const area of areas)
    for (const layer of area.layers) if (typeof layer !== 'number') fixed.set(layer, plateOf(layer));
  const a = new Float64Array(BANDS);
  const s = new Float64Array(BANDS);
  const own = open.map(() => plate(a, s));
  const plates = [...own];
  /** what the plates were made for */
  const made: (State | undefined)[] = open.map(() => undefined);
  let madeBy = 1;
  const kept = new Map<State, Plate>();
  const metrics = areas.map((area) => metricAt(area.target));
  const stack = newStack();
  const seen = new Float64Array(BANDS);
  const residual = new Float64Array(3 * areas.length);
  const labs: Lab[] = areas.map((area) => area.target);

  // most looks change one layer, and plates are what costs
  const film = (layer: number, state: State, by: number): void => {
    if (made[layer] === state && madeBy === by) return;
    made[layer] = state;
    const known = by === 1 ? kept.get(state) : undefined;
    plates[layer] = known ?? plateInto(layer, state, by, own[layer]!);
  };

  const plateInto = (layer: number, { set, weights, load }: State, by: number, out?: Plate): Plate => {
    const whole = weights.reduce((sum, w) => sum + w, 0);
    a.fill(0);
    s.fill(0);
    set.forEach((p, i) => {
      const x = (by * load * weights[i]!) / whole;
      const basis = bases[layer]![p]!;
      for (let b = 0; b < BANDS; b++) {
        a[b]! += x * basis.a[b]!;
        s[b]! += x * basis.s[b]!;
      }
    });
    return plate(a, s, out);
  };

  const leave = (area: OpenArea, below: Stack, from: number): Float64Array => {
    stack.set(below);
    for (const layer of area.layers.slice(from))
      lay(typeof layer === 'number' ? plates[layer]! : fixed.get(layer)!, stack, stack);
    return leaving(stack, area.face, seen);
  };

  /** Applied paint (µm) in so many coats with this share of medium. */
  const load = (
    layer: number,
    { set, weights }: Omit<State, 'load'>,
    share: number,
    coats: number,
  ): number => {
    const { film: coat, solids: thin = 1 } = open[layer]!;
    const whole = weights.reduce((sum, w) => sum + w, 0);
    const solids = set.reduce((sum, p, i) => sum + (weights[i]! / whole) * bases[layer]![p]!.solids, 0);
    return (coats * coat * (1 - share)) / ((1 - share) * solids + share * thin);
  };

  return {
    open,
    areas,
    stop: request.stop ?? (() => false),
    /** of the last look: distances in the metric at the targets, three an area, and colours */
    residual,
    labs,
    load,

    /** Keeps the plate of a state that will be looked at again. */
    keep(layer: number, state: State): void {
      if (kept.size > MOST_KEPT) kept.clear();
      kept.set(state, plateInto(layer, state, 1));
    },

    /** Looks at the areas with their open layers `by` times as thick; the sum of the squared distances. */
    look(states: readonly State[], by = 1): number {
      for (const [layer, state] of states.entries()) film(layer, state, by);
      madeBy = by;
      let cost = 0;
      for (const [i, area] of areas.entries()) {
        const lab = toLab(toXyz(leave(area, area.below, 0), light), light);
        labs[i] = lab;
        const m = metrics[i]!;
        const [dl, da, db] = [lab[0] - area.target[0], lab[1] - area.target[1], lab[2] - area.target[2]];
        residual[3 * i] = m[0]! * dl;
        residual[3 * i + 1] = m[4]! * da + m[5]! * db;
        residual[3 * i + 2] = m[8]! * db;
        for (let r = 3 * i; r < 3 * i + 3; r++) cost += residual[r]! ** 2;
      }
      return cost;
    },

    /** ΔE00 of the last look: the root of the mean square over the areas. */
    off(): number {
      let sum = 0;
      for (const [i, { target }] of areas.entries()) {
        const lab = labs[i]!;
        sum += deltaE00Of(target[0], target[1], target[2], lab[0], lab[1], lab[2]) ** 2;
      }
      return Math.sqrt(sum / areas.length);
    },

    /** Of the films of the last look. */
    glow(area: OpenArea): number {
      const last = area.layers.findLastIndex((l) => typeof l === 'number');
      const lowest = area.layers.findIndex((l) => typeof l === 'number');
      if (lowest < 0) return 0;
      const from = lowest === last ? last : lowest + 1;
      const plain = { ...area, face: { ...area.face, specular: false } };
      const whole = toXyz(leave(plain, area.below, 0), light)[1];
      const dark = toXyz(leave(plain, newStack(), from), light)[1];
      return whole > 0 ? Math.max(0, 1 - dark / whole) : 0;
    },

    /** Least and greatest load of a layer with these proportions. */
    range(layer: number, state: Omit<State, 'load'>): readonly [number, number] {
      const { shares, coats } = open[layer]!;
      return [load(layer, state, shares.at(-1)!, 1), load(layer, state, shares[0]!, coats)];
    },

    /** Logs of parts with which all paints of a set count: strong ones small. */
    even(layer: number, set: readonly number[]): number[] {
      const weak = set.map((p) => {
        const basis = bases[layer]![p]!;
        let sum = 0;
        for (let b = 0; b < BANDS; b++) sum += basis.a[b]! + 0.1 * basis.s[b]!;
        return -Math.log(Math.max(1e-9, sum));
      });
      const top = Math.max(...weak);
      return weak.map((v) => Math.max(LEAST_LOG * 0.8, v - top));
    },
  };
}
