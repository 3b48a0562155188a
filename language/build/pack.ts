/**
 * Makes data short for a bundle. Tables name the same fields and sources over and over: what stands often stands once, and
 * a character in its place. Pairs are replaced by the most that they spare, as in N. J. Larsson and A. Moffat, “Off-line
 * dictionary-based compression”, Proceedings of the IEEE 88 (2000). The way back is a few lines, and quick.
 */
import { DIGITS, FIRST, HALF, LAST, WIDE } from './unpack.ts';

export interface Packed {
  readonly text: string;
  /** one a line */
  readonly stretches: string;
}

/** Pairs that spare at least this share of what the best one spares are replaced before pairs are counted again. */
const NEAR = 0.5;
/** What the character for a stretch costs, in bytes. */
const COST = 2;

interface Symbol {
  readonly text: string;
  /** bytes */
  readonly cost: number;
  /** of a stretch: the symbols it stands for */
  readonly parts?: readonly number[];
}

/** Packs a text of one line that holds none of the characters kept for stretches; throws on any other. */
export function pack(text: string): Packed {
  if (/[\n\u0100-\u058f]/.test(text))
    throw new Error('A text to be packed holds a character kept for packing');
  const symbols: Symbol[] = [];
  const numbers = new Map<string, number>();
  let sequence = (text.match(/[A-Za-z]+|-?\d+|./gsu) ?? []).map((token) => {
    const number = numbers.get(token) ?? symbols.push({ text: token, cost: Buffer.byteLength(token) }) - 1;
    numbers.set(token, number);
    return number;
  });

  const tokens = symbols.length;
  for (;;) {
    const free = LAST - FIRST - (symbols.length - tokens);
    const made = new Map<number, number>();
    for (const [a, b] of worthwhile(sequence, symbols).slice(0, free)) {
      made.set(pairOf(a, b), symbols.length);
      symbols.push({
        text: String.fromCharCode(FIRST + symbols.length - tokens),
        cost: COST,
        parts: [a, b],
      });
    }
    if (made.size === 0) break;
    sequence = replaced(sequence, made);
  }
  const written = (list: readonly number[]): string => list.map((s) => symbols[s]?.text).join('');
  return {
    text: written(sequence),
    stretches: symbols.flatMap((s) => (s.parts ? [written(s.parts)] : [])).join('\n'),
  };
}

const SYMBOLS = 0x1_0000;
const pairOf = (a: number, b: number): number => a * SYMBOLS + b;

/** The pairs that spare most, none sharing a symbol with a better one. */
function worthwhile(sequence: readonly number[], symbols: readonly Symbol[]): (readonly [number, number])[] {
  const counts = new Map<number, number>();
  for (let i = 1; i < sequence.length; i++) {
    const pair = pairOf(sequence[i - 1] as number, sequence[i] as number);
    counts.set(pair, (counts.get(pair) ?? 0) + 1);
  }
  const taken = new Set<number>();
  return [...counts]
    .map(([pair, count]) => {
      const [a, b] = [Math.floor(pair / SYMBOLS), pair % SYMBOLS];
      const cost = (symbols[a] as Symbol).cost + (symbols[b] as Symbol).cost;
      return { a, b, spared: count * (cost - COST) - cost - 1 };
    })
    .filter(({ spared }) => spared > COST)
    .sort((x, y) => y.spared - x.spared)
    .filter(({ a, b, spared }, _, [best]) => {
      const good = spared >= NEAR * (best?.spared ?? 0) && !taken.has(a) && !taken.has(b);
      if (good) taken.add(a).add(b);
      return good;
    })
    .map(({ a, b }) => [a, b] as const);
}

function replaced(sequence: readonly number[], made: ReadonlyMap<number, number>): number[] {
  const out: number[] = [];
  for (let i = 0; i < sequence.length; i++) {
    const whole = made.get(pairOf(sequence[i] as number, sequence[i + 1] ?? -1));
    if (whole !== undefined) i++;
    out.push(whole ?? (sequence[i] as number));
  }
  return out;
}

/** A smooth curve of whole numbers: how its steps change, a character each, two where a change is great. */
export function packCurve(values: readonly number[]): string {
  const differences = (list: readonly number[]) => list.map((v, i) => v - (list[i - 1] ?? 0));
  return differences(differences(values))
    .map((change) => {
      if (Math.abs(change) <= HALF) return DIGITS[change + HALF];
      const wide = change + HALF * DIGITS.length;
      const [high, low] = [DIGITS[Math.floor(wide / DIGITS.length)], DIGITS[wide % DIGITS.length]];
      if (!high || !low) throw new Error(`A curve that changes by ${change} at once cannot be packed`);
      return `${WIDE}${high}${low}`;
    })
    .join('');
}
