/** Every word of every formula of a file, with the layer it stands in. */
import type { Formula, Ingredient, Plan } from '../../plan/plan.ts';

export interface Placed<T> {
  readonly layer?: number;
  readonly value: T;
}

export function* formulas(
  plan: Plan,
): Generator<Placed<Formula> & { readonly of: 'paint' | 'medium' | 'mix' | 'layer'; readonly name: string }> {
  for (const p of plan.paints) if (p.formula) yield { value: p.formula, of: 'paint', name: p.name };
  for (const m of plan.mediums) if (m.formula) yield { value: m.formula, of: 'medium', name: m.name };
  for (const m of plan.mixes) if (m.formula) yield { value: m.formula, of: 'mix', name: m.name };
  for (const l of plan.layers)
    if (l.colour?.kind === 'formula')
      yield { value: l.colour.formula, of: 'layer', name: l.name, layer: l.index };
}

interface Named {
  readonly ingredient: Ingredient;
  readonly layer?: number;
}

const known = new WeakMap<Plan, readonly Named[]>();

/** Listed once for all rules. */
export function ingredients(plan: Plan): readonly Named[] {
  const listed =
    known.get(plan) ??
    plan.names.flatMap(({ ingredient, layer }) => (ingredient ? [{ ingredient, layer }] : []));
  known.set(plan, listed);
  return listed;
}
