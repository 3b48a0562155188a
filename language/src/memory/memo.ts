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
  /**
   * The same, with the key that `same` was told by before: all that is handed must be told by that object. Saves making
   * the key, which costs more than looking it up.
   */
  of<H>(same: object | undefined, handed: () => H, make: (handed: Placeless<H>) => V): V;
  /** begins a new generation */
  turn(): void;
  /** a memory of its own that knows what this one knows now */
  fork(): Memo<V>;
  readonly size: number;
}

export const createMemo = <V extends {}>(): Memo<V> => memo(new Map(), new WeakMap());

function memo<V extends {}>(young: Map<string, V>, keys: WeakMap<object, string>): Memo<V> {
  let old = new Map<string, V>();
  const under = (key: string, make: () => V): V => {
    const used = young.get(key);
    if (used !== undefined) return used;
    const value = old.get(key) ?? nameForGood(make());
    young.set(key, value);
    return value;
  };
  return {
    get: (handed, make) => under(keyOf(handed), () => make(handed as Placeless<typeof handed>)),
    of(same, handed, make) {
      const told = same && keys.get(same);
      if (told !== undefined)
        return under(told, () => make(handed() as Placeless<ReturnType<typeof handed>>));
      const all = handed();
      const key = keyOf(all);
      if (same) keys.set(same, key);
      return under(key, () => make(all as Placeless<typeof all>));
    },
    // keys are made of content alone, and hold in every memory
    fork: () => memo(new Map([...old, ...young]), keys),
    turn() {
      old = young;
      young = new Map();
    },
    get size() {
      return young.size + old.size;
    },
  };
}
