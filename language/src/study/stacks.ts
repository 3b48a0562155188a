/** Which layers lie on which area, bottom to top, without ever writing out every pair of layers. */
import type { Plan } from '../plan/plan.ts';

export interface Stacks {
  /** area → indices of layers, bottom to top */
  readonly on: ReadonlyMap<string, readonly number[]>;
  /** layer → area → how many layers lie beneath it there */
  readonly depth: readonly ReadonlyMap<string, number>[];
  /** layer → area → indices beneath, nearest first; written out only when asked */
  below(layer: number): ReadonlyMap<string, readonly number[]>;
}

export function stacksOf(plan: Plan): Stacks {
  const on = new Map<string, number[]>(plan.areas.map((a) => [a.name, []]));
  const depth = plan.layers.map((layer, index) => {
    const here = new Map<string, number>();
    for (const area of layer.areas) {
      const stack = on.get(area) ?? [];
      on.set(area, stack);
      if (here.has(area)) continue;
      here.set(area, stack.length);
      stack.push(index);
    }
    return here;
  });
  // From the top down, so that what lies beneath a layer is the tail of one list for each area.
  let reversed: Map<string, number[]> | undefined;
  const tail = (area: string, beneath: number): readonly number[] => {
    reversed ??= new Map([...on].map(([name, stack]) => [name, stack.toReversed()]));
    const all = reversed.get(area) ?? [];
    return beneath === 0 ? [] : all.slice(all.length - beneath);
  };
  return { on, depth, below: (layer) => lazyMap(depth[layer] ?? new Map(), tail) };
}

/** A map whose values are made when read. */
function lazyMap<K, V, W>(keys: ReadonlyMap<K, V>, make: (key: K, value: V) => W): ReadonlyMap<K, W> {
  const whole = (): Map<K, W> => new Map([...keys].map(([key, value]) => [key, make(key, value)]));
  return {
    size: keys.size,
    has: (key) => keys.has(key),
    get: (key) => {
      const value = keys.get(key);
      return value === undefined ? undefined : make(key, value);
    },
    forEach(f) {
      for (const [key, value] of keys) f(make(key, value), key, this);
    },
    keys: () => keys.keys(),
    values: () => whole().values(),
    entries: () => whole().entries(),
    [Symbol.iterator]: () => whole()[Symbol.iterator](),
  };
}
