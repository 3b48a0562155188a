/** Where to look when nobody can tell how a layer dries. What is not known is not ready. */
import type { Formula, Ingredient, Layer, Medium, Mix, Paint, Place } from '../plan/plan.ts';
import type { Composition, Drying } from '../results/study.ts';

/** Kinds that have nothing to dry of their own, or are bought dry, where the layer names no paint for them. */
const DRY: readonly Layer['kind'][] = ['ground', 'size', 'drawing', 'leaf'];
/** Kinds that have nothing to dry where nothing is said of them at all. */
const NO_FILM: readonly Layer['kind'][] = ['drawing', 'leaf', 'deposit'];

type Opened = Mix | Medium | Paint;

/** What is wrong inside a formula, as deep as this file goes; undefined where every name in it is known. */
function inFormula(
  formula: Formula | undefined,
  uri: string,
  opened: ReadonlySet<Opened>,
): Place | undefined {
  if (!formula) return undefined;
  for (const part of formula.parts) {
    const place = inIngredient(part.ingredient, uri, opened);
    if (place) return place.uri === uri ? place : part.ingredient.place;
  }
  const counts = formula.parts.some((p) => (p.amount?.value ?? 1) > 0);
  return formula.amounts === 'mixed' || !counts ? formula.place : undefined;
}

function inIngredient(
  { is, place }: Ingredient,
  uri: string,
  opened: ReadonlySet<Opened>,
): Place | undefined {
  switch (is.kind) {
    case 'paint':
      if (is.paint.binder && !is.paint.binder.is) return is.paint.binder.place;
      return within(is.paint, uri, opened);
    case 'mix':
      return opened.has(is.mix) ? place : within(is.mix, uri, opened);
    case 'medium':
      return opened.has(is.medium) ? place : within(is.medium, uri, opened);
    case 'pigment':
    case 'binder':
    case 'solvent':
      return undefined;
    default:
      return place;
  }
}

/** Deeper than this nobody is led: the name that leads there is told instead. */
const DEEPEST = 100;

function within(thing: Opened, uri: string, opened: ReadonlySet<Opened>): Place | undefined {
  if (!thing.formula || opened.size > DEEPEST) return thing.namePlace;
  return inFormula(thing.formula, uri, new Set(opened).add(thing));
}

function inMedium({ of, place }: NonNullable<Layer['medium']>, uri: string): Place | undefined {
  if (!of) return place;
  if (!of.is) return of.place;
  if (of.is.kind !== 'medium') return undefined;
  const found = within(of.is.medium, uri, new Set());
  return found && (found.uri === uri ? found : of.place);
}

/**
 * The place to look at, in the layer's own file. Undefined where the layer dries as `drying` says, and where there is
 * nothing in it to dry.
 */
export function notKnown(
  layer: Layer,
  composition: Composition | undefined,
  drying: Drying | undefined,
): Place | undefined {
  const { colour, material, medium, resin, kind, namePlace } = layer;
  const { uri } = layer.place;
  if (material && !material.is) return material.place;
  if (drying) return undefined;
  if (resin && !resin.is) return resin.place;
  const inside =
    (medium && inMedium(medium, uri)) ??
    (colour?.kind === 'formula' ? inFormula(colour.formula, uri, new Set()) : undefined);
  if (inside) return inside;
  if (composition) return namePlace;
  if (colour?.kind === 'formula') return colour.formula.place;
  if (colour?.kind === 'unknown') return colour.place;
  if (colour) return DRY.includes(kind) ? undefined : colour.value.place;
  return medium || NO_FILM.includes(kind) ? undefined : namePlace;
}
