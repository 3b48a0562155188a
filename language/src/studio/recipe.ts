/** What mediums and mixes come down to: oils, resins and solvents; paints. Shares by volume. */
import { binder, solvent } from '../materials/catalogue.ts';
import type { Interval } from '../materials/interval.ts';
import type { Binder, Figure, Solvent } from '../materials/types.ts';
import { type Answers, insideFirst } from '../memory/inside-first.ts';
import type { Formula, Ingredient, Layer, Medium, Mix, Paint, Plan, Preparation } from '../plan/plan.ts';

export type Liquid =
  | { readonly kind: 'binder'; readonly binder: Binder }
  | { readonly kind: 'solvent'; readonly solvent: Solvent };

export interface LiquidShare {
  readonly liquid: Liquid;
  /** fraction of the volume */
  readonly share: number;
}

export const middle = (f: Figure): number => (f.low + f.high) / 2;
export const asInterval = (f: Figure): Interval => ({ low: f.low, likely: middle(f), high: f.high });
export const liquidId = (l: Liquid): string => (l.kind === 'binder' ? l.binder.id : l.solvent.id);
export const liquidDensity = (l: Liquid): Figure =>
  l.kind === 'binder' ? l.binder.density : l.solvent.density;

/**
 * A formula as shares of its volume, each part worked out by `part`. Undefined where a part is unknown, contains
 * itself, or the amounts cannot be added up. `density` (g/ml) turns grams into volumes.
 */
function shares<K, T>(
  formula: Formula | undefined,
  part: (
    ingredient: Ingredient,
  ) => { readonly density: number; readonly inside: ReadonlyMap<K, T> } | undefined,
  scaled: (value: T, share: number, before: T | undefined) => T,
): ReadonlyMap<K, T> | undefined {
  if (!formula || formula.amounts === 'mixed' || formula.parts.length === 0) return undefined;
  const volumes: { volume: number; inside: ReadonlyMap<K, T> }[] = [];
  for (const { amount, ingredient } of formula.parts) {
    const made = part(ingredient);
    if (!made) return undefined;
    const value = amount?.value ?? 1;
    volumes.push({ volume: amount?.kind === 'g' ? value / made.density : value, inside: made.inside });
  }
  const whole = volumes.reduce((sum, v) => sum + v.volume, 0);
  if (!(whole > 0) || !Number.isFinite(whole)) return undefined;
  const result = new Map<K, T>();
  for (const { volume, inside } of volumes)
    for (const [key, value] of inside) result.set(key, scaled(value, volume / whole, result.get(key)));
  return result;
}

const liquidMap = (liquid: Liquid): ReadonlyMap<string, LiquidShare> =>
  new Map([[liquidId(liquid), { liquid, share: 1 }]]);
const averageDensity = (inside: ReadonlyMap<string, LiquidShare>): number => {
  let density = 0;
  for (const { liquid, share } of inside.values()) density += share * middle(liquidDensity(liquid));
  return density;
};

/** Remembers what was worked out, so that mediums made of mediums cost no more than their text is long. */
export type LiquidMemo = Map<Medium, ReadonlyMap<string, LiquidShare> | undefined>;

/** A map as `insideFirst` keeps its answers. */
const answersIn = <K, V>(memo: Map<K, V | undefined>): Answers<K, V> => ({
  has: (key) => memo.has(key),
  get: (key) => (memo.has(key) ? { value: memo.get(key) } : undefined),
  set: (key, { value }) => memo.set(key, value),
});

const mediumsIn = ({ formula }: Medium): readonly Medium[] =>
  formula?.parts.flatMap(({ ingredient: { is } }) => (is.kind === 'medium' ? [is.medium] : [])) ?? [];
const mixesIn = ({ formula }: Mix): readonly Mix[] =>
  formula?.parts.flatMap(({ ingredient: { is } }) => (is.kind === 'mix' ? [is.mix] : [])) ?? [];

const mediumMap = (medium: Medium, memo: LiquidMemo): ReadonlyMap<string, LiquidShare> | undefined =>
  insideFirst<Medium, ReadonlyMap<string, LiquidShare>>(
    medium,
    mediumsIn,
    ({ formula }, of) =>
      shares<string, LiquidShare>(
        formula,
        ({ is }) => {
          const inside =
            is.kind === 'medium'
              ? of(is.medium)
              : is.kind === 'binder' || is.kind === 'solvent'
                ? liquidMap(is)
                : undefined;
          return inside && { inside, density: averageDensity(inside) };
        },
        (value, share, before) => ({
          liquid: value.liquid,
          share: value.share * share + (before?.share ?? 0),
        }),
      ),
    answersIn(memo),
  );

/** The liquids of a medium, nested ones worked out; undefined where a part is unknown or it contains itself. */
export function liquidsOfMedium(
  medium: Medium,
  memo: LiquidMemo = new Map(),
): readonly LiquidShare[] | undefined {
  const list = mediumMap(medium, memo);
  return list && [...list.values()];
}

/** The liquids of what a layer's `medium` field or a preparation's agent names. */
export function liquidsOf(
  is:
    | NonNullable<NonNullable<Layer['medium']>['of']>['is']
    | NonNullable<Preparation['agent']>['is']
    | undefined,
  memo?: LiquidMemo,
): readonly LiquidShare[] | undefined {
  if (is?.kind === 'medium') return liquidsOfMedium(is.medium, memo);
  if (is?.kind === 'binder' || is?.kind === 'solvent') return [{ liquid: is, share: 1 }];
  return undefined;
}

/** The liquids of what stands as medium in a film: a declared medium, or one oil, resin or solvent. */
export function liquidsNamed(
  plan: Plan,
  name: string,
  memo?: LiquidMemo,
): readonly LiquidShare[] | undefined {
  const medium = plan.visible.mediums.get(name);
  if (medium) return liquidsOfMedium(medium, memo);
  const oil = binder(name);
  if (oil) return [{ liquid: { kind: 'binder', binder: oil }, share: 1 }];
  const thin = solvent(name);
  return thin && [{ liquid: { kind: 'solvent', solvent: thin }, share: 1 }];
}

/** The paints of a mix, mixes inside it worked out; shares by volume. `density` gives g/ml of a paint. */
export const paintsOfMix = (
  mix: Mix,
  density: (paint: Paint) => number,
): ReadonlyMap<Paint, number> | undefined =>
  insideFirst<Mix, ReadonlyMap<Paint, number>>(
    mix,
    mixesIn,
    ({ formula }, of) =>
      shares<Paint, number>(
        formula,
        ({ is }) => {
          const inside: ReadonlyMap<Paint, number> | undefined =
            is.kind === 'paint' ? new Map([[is.paint, 1]]) : is.kind === 'mix' ? of(is.mix) : undefined;
          if (!inside) return undefined;
          let whole = 0;
          for (const [paint, share] of inside) whole += share * density(paint);
          return { inside, density: whole };
        },
        (value, share, before) => value * share + (before ?? 0),
      ),
    new Map(),
  );
