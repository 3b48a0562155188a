/** g/ml of a paint from its recipe: what its pigments and its oil weigh together. */
import { MIDDLE, paste } from '../film/paste.ts';
import { solvent } from '../materials/catalogue.ts';
import type { Interval } from '../materials/interval.ts';
import type { Pigment } from '../materials/types.ts';
import type { Paint } from '../plan/plan.ts';
import { middle } from './recipe.ts';

/** Undefined where the paint's recipe is not known. */
export function paintDensity(paint: Paint): Interval | undefined {
  const binder = paint.binder?.is;
  if (!binder || !paint.formula || paint.formula.amounts === 'mixed') return undefined;
  const pigments: { pigment: Pigment; mass: number }[] = [];
  for (const { amount, ingredient } of paint.formula.parts) {
    if (ingredient.is.kind !== 'pigment') return undefined;
    const { pigment } = ingredient.is;
    const value = amount?.value ?? 1;
    pigments.push({ pigment, mass: amount?.kind === 'ml' ? value * middle(pigment.density) : value });
  }
  const recipe = { name: paint.name, pigments, binder, oil: paint.oil?.value };
  const found = [
    MIDDLE,
    ...([-1, 1] as const).map((end) => ({ ...MIDDLE, oilAbsorption: end, stiffness: end })),
  ].map((choice) => paste(recipe, choice, solvent)?.density);
  const known = found.filter((d) => d !== undefined && Number.isFinite(d)) as number[];
  if (known.length === 0 || found[0] === undefined) return undefined;
  return { low: Math.min(...known), likely: found[0], high: Math.max(...known) };
}
