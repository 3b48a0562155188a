/** Every word of every formula of a file, with the layer it stands in. */
import type { Formula, Ingredient, Layer, Plan } from '../../plan/plan.ts';

/** A formula with the name of the declaration it stands in, and its layer. */
export interface Placed {
  readonly formula: Formula;
  readonly name: string;
  readonly layer?: number;
}

/** The formulas of all declarations but layers. */
export const declaredFormulas = ({ paints, mediums, mixes }: Plan): readonly Placed[] =>
  [...paints, ...mediums, ...mixes].flatMap(({ formula, name }) => (formula ? [{ formula, name }] : []));

/** The formula of a layer's colour, if it has one. */
export const layerFormulas = ({ colour, name, index }: Layer): readonly Placed[] =>
  colour?.kind === 'formula' ? [{ formula: colour.formula, name, layer: index }] : [];

interface Named {
  readonly ingredient: Ingredient;
  readonly layer?: number;
}

type Kind = Ingredient['is']['kind'];

const known = new WeakMap<Plan, ReadonlyMap<Kind | 'any', readonly Named[]>>();

/** The words that mean a thing of some kind; listed once for all rules. */
export function ingredients(plan: Plan, kind: Kind | 'any' = 'any'): readonly Named[] {
  let listed = known.get(plan);
  if (!listed) {
    const made = new Map<Kind | 'any', Named[]>();
    const add = (to: Kind | 'any', named: Named) => {
      const before = made.get(to);
      if (before) before.push(named);
      else made.set(to, [named]);
    };
    for (const { ingredient, layer } of plan.names) {
      if (!ingredient) continue;
      add('any', { ingredient, layer });
      add(ingredient.is.kind, { ingredient, layer });
    }
    listed = made;
    known.set(plan, listed);
  }
  return listed.get(kind) ?? [];
}
