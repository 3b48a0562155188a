/** g/ml of a paint from its recipe: what its pigments and its oil weigh together. */
import type { PasteInput } from '../film/input.ts';
import { MIDDLE, paste } from '../film/paste.ts';
import { binder, solvent } from '../materials/catalogue.ts';
import type { Interval } from '../materials/interval.ts';
import type { Pigment } from '../materials/types.ts';
import type { Paint, Plan } from '../plan/plan.ts';
import type { LayerStudy } from '../results/study.ts';
import { middle } from './recipe.ts';

function densityOf(recipe: PasteInput): Interval | undefined {
  const at = (end: -1 | 0 | 1) =>
    paste(recipe, { ...MIDDLE, oilAbsorption: end, stiffness: end }, solvent)?.density;
  const [dense, likely, thin] = [at(-1), at(0), at(1)];
  if (likely === undefined || dense === undefined || thin === undefined) return undefined;
  return { low: Math.min(dense, likely, thin), likely, high: Math.max(dense, likely, thin) };
}

/** Undefined where the paint's recipe is not known. A paint that names no binder is ground in linseed oil. */
export function recipeOf(paint: Paint): PasteInput | undefined {
  const oil = paint.binder ? paint.binder.is : binder('linseed');
  if (!oil || !paint.formula || paint.formula.amounts === 'mixed') return undefined;
  const pigments: { pigment: Pigment; mass: number }[] = [];
  for (const { amount, ingredient } of paint.formula.parts) {
    if (ingredient.is.kind !== 'pigment') return undefined;
    const { pigment } = ingredient.is;
    const value = amount?.value ?? 1;
    pigments.push({ pigment, mass: amount?.kind === 'ml' ? value * middle(pigment.density) : value });
  }
  return { name: paint.name, pigments, binder: oil, oil: paint.oil?.value };
}

/** Of a pigment a layer names by itself, taken as a tube in linseed oil. */
export function tubeRecipe(plan: Plan, layer: LayerStudy, name: string): PasteInput | undefined {
  const oil = binder('linseed');
  const pigment =
    plan.visible.pigments.get(name)?.pigment ??
    layer.composition?.pigments.find((p) => p.pigment.id === name)?.pigment;
  return oil && pigment && { name, pigments: [{ pigment, mass: 1 }], binder: oil };
}

export function paintDensity(paint: Paint): Interval | undefined {
  const recipe = recipeOf(paint);
  return recipe && densityOf(recipe);
}

export function tubeDensity(plan: Plan, layer: LayerStudy, name: string): Interval | undefined {
  const recipe = tubeRecipe(plan, layer, name);
  return recipe && densityOf(recipe);
}

/** The pigments in one ml of a paint or tube, in ml. */
export function recipeParts(
  plan: Plan,
  layer: LayerStudy,
  name: string,
): readonly { readonly pigment: Pigment; readonly volume: number }[] | undefined {
  const paint = plan.visible.paints.get(name);
  const recipe = paint ? recipeOf(paint) : tubeRecipe(plan, layer, name);
  const made = recipe && paste(recipe, MIDDLE, solvent);
  return made && recipe.pigments.map(({ pigment }, i) => ({ pigment, volume: made.pigments[i]!.volume }));
}
