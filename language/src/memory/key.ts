/**
 * A key for whatever a computation is handed: equal only for equal content, figure by figure. Nothing is picked by hand,
 * so a field that is added is in the key before anyone thinks of it. Only places are left out: they move with every
 * keystroke, and `Placeless` keeps computations from reading them.
 */

/** What a computation may read of what it is handed: all but where it stands in the text. */
export type Placeless<T> = T extends string | number | boolean | undefined | null
  ? T
  : T extends ReadonlyMap<unknown, unknown> | ReadonlySet<unknown> | ArrayBufferView | AnyFunction
    ? T
    : T extends readonly unknown[]
      ? { readonly [I in keyof T]: Placeless<T[I]> }
      : { readonly [K in keyof T as K extends 'place' | `${string}Place` ? never : K]: Placeless<T[K]> };

type AnyFunction = (...args: never[]) => unknown;

/** Texts longer than this are told by a number. */
const LONG = 48;
/** Twice so many long texts are remembered; numbers are never given again, so that forgetting costs work and nothing else. */
const MOST = 50_000;
/** Nothing plain nests deeper; what does is taken to lead back to itself and stands for itself alone. */
const DEEPEST = 60;

const known = new WeakMap<object, string>();
let numbers = new Map<string, string>();
let before = new Map<string, string>();
let next = 0;

const fresh = (): string => `#${next++}`;

function numbered(text: string): string {
  const used = numbers.get(text);
  if (used) return used;
  if (numbers.size >= MOST) {
    before = numbers;
    numbers = new Map();
  }
  const number = before.get(text) ?? fresh();
  numbers.set(text, number);
  return number;
}

/** From here on this very object is told by a number of its own, whatever it holds. */
export function nameForGood<T>(value: T): T {
  if (typeof value === 'object' && value !== null && !known.has(value)) known.set(value, fresh());
  return value;
}

function items(list: Iterable<unknown>, depth: number): string {
  let text = '';
  for (const item of list) text += `${write(item, depth)},`;
  return text;
}

function content(value: object, depth: number): string {
  if (Array.isArray(value)) return `[${items(value, depth)}]`;
  if (ArrayBuffer.isView(value)) return `<${items(value as Float64Array, depth)}>`;
  if (value instanceof Map || value instanceof Set) return `(${items(value, depth)})`;
  let text = '{';
  for (const name in value)
    if (name !== 'place' && !name.endsWith('Place'))
      text += `${name}:${write((value as Record<string, unknown>)[name], depth)},`;
  return `${text}}`;
}

function write(value: unknown, depth: number): string {
  switch (typeof value) {
    case 'string':
      // its length comes first, so that no text can pass for the end of another
      return `${value.length}'${value}`;
    case 'number':
      return Object.is(value, -0) ? '-0' : String(value);
    case 'object':
    case 'function':
      break;
    default:
      return String(value);
  }
  if (value === null) return 'null';
  const told = known.get(value);
  if (told) return told;
  if (typeof value === 'function' || depth > DEEPEST) {
    const number = fresh();
    known.set(value, number);
    return number;
  }
  const text = content(value, depth + 1);
  if (text.length <= LONG) return text;
  // a deeper look may have found that it leads back here
  const number = known.get(value) ?? numbered(text);
  known.set(value, number);
  return number;
}

/** What is handed must not change afterwards. */
export const keyOf = (handed: unknown): string =>
  // its own text is the key: only what lies in it comes back often enough to be numbered
  typeof handed === 'object' && handed !== null && !known.has(handed) ? content(handed, 1) : write(handed, 0);
