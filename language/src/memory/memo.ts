import { keyOf, nameForGood, type Placeless } from './key.ts';

/**
 * A memory of two generations: what the last turn used stays for the next, what two turns did not use is forgotten. An
 * edit so costs what it changed, and a long session does not grow.
 */
export interface Memo<V> {
  /**
   * What `make` made of `handed`, or of its equal. `make` may read nothing else that can change: what it needs, it is
   * handed. The result is never changed; handed on to another memory, it is told by itself.
   */
  get<H>(handed: H, make: (handed: Placeless<H>) => V): V;
  /** begins a new generation */
  turn(): void;
  readonly size: number;
}

export function createMemo<V extends {}>(): Memo<V> {
  let old = new Map<string, V>();
  let young = new Map<string, V>();
  return {
    get(handed, make) {
      const key = keyOf(handed);
      const used = young.get(key);
      if (used !== undefined) return used;
      const value = old.get(key) ?? nameForGood(make(handed as Placeless<typeof handed>));
      young.set(key, value);
      return value;
    },
    turn() {
      old = young;
      young = new Map();
    },
    get size() {
      return young.size + old.size;
    },
  };
}
