/** Heaps of paint by things everybody has held: ml, from memory unless said. A dropper's drop: twenty make a ml (common practice). */
interface Familiar {
  readonly one: string;
  readonly many: string;
  readonly ml: number;
}

/** From small to large. As balls they measure 4.5, 8, 16, 21, 34 and 46 mm across. */
export const SIZES: readonly Familiar[] = [
  { one: 'a lentil', many: 'lentils', ml: 0.05 },
  { one: 'a pea', many: 'peas', ml: 0.3 },
  { one: 'a hazelnut', many: 'hazelnuts', ml: 2 },
  { one: 'a cherry', many: 'cherries', ml: 5 },
  { one: 'a walnut', many: 'walnuts', ml: 20 },
  { one: 'an egg', many: 'eggs', ml: 50 },
];

const DROP_ML = 0.05;
/** Nobody counts more drops than these. */
const MOST_DROPS = 20;

const COUNT = ['', '', 'two', 'three'] as const;
/** ln of the factor by which a heap may differ from what it is likened to. */
const ALIKE = Math.log(4 / 3) + 1e-9;
const MOST_ML = 150;

/** `a hazelnut`, `three peas`; undefined for what lies near none of them. */
export function familiarSize(ml: number): string | undefined {
  let best: { readonly words: string; readonly off: number } | undefined;
  for (const { one, many, ml: each } of SIZES)
    for (let n = 1; n < COUNT.length; n++) {
      const off = Math.abs(Math.log(ml / (n * each)));
      // one thing is seen at a glance, so several must fit better to be named
      if (!best || off < best.off - 0.1) best = { words: n === 1 ? one : `${COUNT[n]} ${many}`, off };
    }
  return best && best.off <= ALIKE && ml <= MOST_ML ? best.words : undefined;
}

/** `6 drops`; undefined where a spoon or a syringe serves better. */
export function dropWords(ml: number): string | undefined {
  const n = Math.round(ml / DROP_ML);
  return n > MOST_DROPS || !(ml > 0) ? undefined : n <= 1 ? '1 drop' : `${n} drops`;
}
