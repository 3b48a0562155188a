/**
 * A memory of two generations: what the last turn used stays for the next, what two turns did not use is forgotten. An
 * edit so costs what it changed, and a long session does not grow.
 */
export interface Memo<V> {
  /** the remembered value, or `make()` remembered */
  get(key: string, make: () => V): V;
  /** begins a new generation */
  turn(): void;
  readonly size: number;
}

export function createMemo<V>(): Memo<V> {
  let old = new Map<string, V>();
  let young = new Map<string, V>();
  return {
    get(key, make) {
      const fresh = young.get(key);
      if (fresh !== undefined) return fresh;
      const value = old.get(key) ?? make();
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
