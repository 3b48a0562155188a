/** Where answers are kept. */
export interface Answers<K, V> {
  has(key: K): boolean;
  get(key: K): { readonly value: V | undefined } | undefined;
  set(key: K, answer: { readonly value: V | undefined }): unknown;
}

/**
 * Works out `root` after all that lies inside it, without recursion, so that no chain is too long for the stack. What
 * leads back to itself finds no answer inside, whatever it was reached from. Linear in things and their parts.
 */
export function insideFirst<K, V>(
  root: K,
  inside: (thing: K) => readonly K[],
  make: (thing: K, of: (inner: K) => V | undefined) => V | undefined,
  answers: Answers<K, V>,
): V | undefined {
  const open = new Set<K>();
  const of = (inner: K) => answers.get(inner)?.value;
  const path: { readonly thing: K; readonly left: K[] }[] = [];
  const enter = (thing: K) => {
    open.add(thing);
    path.push({ thing, left: [...inside(thing)] });
  };
  if (!answers.has(root)) enter(root);
  for (let top = path.at(-1); top; top = path.at(-1)) {
    const next = top.left.pop();
    if (next === undefined) {
      path.pop();
      open.delete(top.thing);
      answers.set(top.thing, { value: make(top.thing, of) });
    } else if (!answers.has(next) && !open.has(next)) enter(next);
  }
  return of(root);
}
