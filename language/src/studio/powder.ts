/** Paint comes from the tube; a few are ground by the painter, who then handles dry pigment and its dust. */
import { type Caution, cautionFor, cautionIn, isDust } from '../materials/cautions.ts';
import type { Binder, GroundMaterial, Hazard, Pigment } from '../materials/types.ts';
import type { Formula, Ingredient, Mix, Paint, Plan } from '../plan/plan.ts';

/** A pigment of the painter's own, of which is stated what only a dry pigment has. */
function isDry({ is }: Ingredient): boolean {
  const own = is.kind === 'pigment' ? is.own : undefined;
  return (
    own !== undefined &&
    (own.density !== undefined || own.oilAbsorption !== undefined || own.hazards.some((h) => isDust(h.value)))
  );
}

const isTempered = (is: Binder | GroundMaterial | undefined): boolean =>
  is?.kind === 'egg' || is?.id === 'glue' || is?.id === 'distemper';

/**
 * Whether the painter grinds a paint: it says so, its pigment is weighed in grams or known dry, or it is tempered with
 * egg or glue, which nobody keeps in tubes (common practice).
 */
function isGround({ handGround, binder, formula }: Paint): boolean {
  return (
    handGround !== undefined ||
    isTempered(binder?.is) ||
    formula?.parts.some((p) => p.amount?.kind === 'g' || isDry(p.ingredient)) === true
  );
}

export interface Powders {
  /** what to beware of in a pigment as this plan handles it; undefined where nothing is */
  readonly caution: (pigment: Pigment, hazard: Hazard) => Caution | undefined;
  /** the paints they are ground into, or their own names where a layer takes them as they are */
  readonly names: ReadonlySet<string>;
}

/** What a plan handles dry: its own paints and mixes, and whatever its layers take from other files. Circles end. */
export function powders({ kind, paints, mixes, layers }: Plan): Powders {
  const pigments = new Set<Pigment>();
  const names = new Set<string>();
  const opened = new Set<Mix | Paint>();
  const waiting: (Formula | undefined)[] = [];
  const open = (inside: Mix | Paint, ground: boolean) => {
    if (opened.has(inside)) return;
    opened.add(inside);
    waiting.push(inside.formula);
    if (!ground) return;
    for (const { ingredient } of inside.formula?.parts ?? [])
      if (ingredient.is.kind === 'pigment') {
        pigments.add(ingredient.is.pigment);
        names.add(inside.name);
      }
  };
  // a record is not painted
  if (kind === 'record') return { names, caution: (p, h) => cautionIn(p, h, false) };
  for (const paint of paints) open(paint, isGround(paint));
  for (const mix of mixes) open(mix, false);
  for (const { colour, material, name } of layers) {
    if (colour?.kind !== 'formula') continue;
    waiting.push(colour.formula);
    if (isTempered(material?.is))
      for (const { ingredient } of colour.formula.parts)
        if (ingredient.is.kind === 'pigment') {
          pigments.add(ingredient.is.pigment);
          names.add(name);
        }
  }
  for (const formula of waiting)
    for (const { ingredient } of formula?.parts ?? []) {
      const { is } = ingredient;
      if (is.kind === 'paint') open(is.paint, isGround(is.paint));
      else if (is.kind === 'mix') open(is.mix, false);
      else if (is.kind === 'pigment' && isDry(ingredient) && !pigments.has(is.pigment)) {
        pigments.add(is.pigment);
        names.add(ingredient.name);
      }
    }
  const dust = new Set([...pigments].flatMap((p) => p.hazards));
  return {
    names,
    caution(pigment, hazard) {
      const caution = cautionIn(pigment, hazard, pigments.has(pigment));
      // where another pigment is handled dry, its stronger words hold for both
      return caution && dust.has(hazard) ? cautionFor(hazard) : caution;
    },
  };
}
