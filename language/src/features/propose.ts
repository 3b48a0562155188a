/** Proportions for a wanted colour, from the paints a plan has, where a mix or a target wants it. */
import type { Lab } from '../optics/cie.ts';
import { parseColour, type Screen, shown } from '../optics/css.ts';
import { opticalData } from '../optics/data.ts';
import { type Match, match } from '../optics/match.ts';
import { matchCoats, matchThickness, type ThicknessMatch } from '../optics/match-thickness.ts';
import type { Ingredient, Layer, Paint, Plan } from '../plan/plan.ts';
import type { Study } from '../results/study.ts';
import { compositionOf } from '../study/what-if.ts';
import { matchPaint, nowhere } from './single.ts';

/**
 * A colour that is wanted (CIELAB D65/2°), where it shall lie, and out of what. `within` is a ΔE00, `most` the paints
 * in one recipe.
 */
export interface Wanted {
  readonly target: Lab;
  /** the layer whose film, medium and place are meant; without one a covering film over the finished area */
  readonly layer?: Layer;
  /** lie over this layer (by index) instead of beneath `layer` */
  readonly over?: number;
  readonly area: string;
  /** names of paints; all of the plan where not given */
  readonly from?: readonly string[];
  readonly most?: number;
  readonly within?: number;
}

/** Recipes for a colour, best first, with the film they were sought for. */
export interface Proposal extends Match {
  readonly target: { readonly lab: Lab } & Pick<Screen, 'hex' | 'outOfGamut'>;
  /** what film was assumed, in words */
  readonly film: string;
  readonly paints: readonly string[];
}

/** Paints of the plan, and pigments it uses straight from the tube. */
export function candidates(plan: Plan): Map<string, Ingredient> {
  const byName = new Map<string, Ingredient>();
  for (const paint of plan.visible.paints.values())
    byName.set(paint.name, {
      name: paint.name,
      place: nowhere,
      is: { kind: 'paint', paint: paint as Paint },
    });
  for (const l of plan.layers)
    if (l.colour?.kind === 'formula')
      for (const { ingredient } of l.colour.formula.parts)
        if (ingredient.is.kind === 'pigment')
          byName.set(ingredient.is.own?.name ?? ingredient.is.pigment.id, ingredient);
  return byName;
}

/**
 * Names of the paints a plan may mix: those declared or brought in by `use`, and pigments straight from the tube.
 */
export const paintNames = (plan: Plan): string[] => [...candidates(plan).keys()];

/** Undefined where there is no paint, or nothing can be said of what lies beneath. */
export function propose(study: Study, wanted: Wanted): Proposal | undefined {
  const { plan } = study;
  const { layer } = wanted;
  const chosen = [...candidates(plan)].filter(([name]) => !wanted.from || wanted.from.includes(name));
  const paints = chosen.flatMap(([name, i]) => matchPaint(study, name, i, layer));
  const index = wanted.over !== undefined ? wanted.over + 1 : layer?.index;
  const below = study.beneath(wanted.area, index);
  if (paints.length === 0 || !below) return undefined;
  const composition = layer && compositionOf(layer);
  const studied = layer && study.layers[layer.index];
  const share = composition?.mediumShare.likely ?? 0;
  const thickness = studied?.dryFilm?.likely ?? layer?.film?.value.likely ?? 30;
  const face = layer ? (study.beneath(wanted.area, layer.index + 1)?.face ?? below.face) : below.face;
  const matched = match({
    target: wanted.target,
    paints,
    ...(share > 0 ? { medium: { share, solids: composition?.mediumSolids } } : {}),
    thickness,
    below: below.stack,
    face,
    light: plan.studio.lightSource?.value,
    most: wanted.most,
    within: wanted.within,
  });
  const over =
    index === undefined
      ? 'what is there in the end'
      : (plan.layers.findLast((l) => l.index < index && l.areas.includes(wanted.area))?.name ??
        'the bare support');
  return {
    ...matched,
    target: { lab: wanted.target, ...shown(wanted.target) },
    film: `${Math.round(thickness * 10) / 10} µm${share > 0 ? ` with ${Math.round(share * 100)} % medium` : ''} on ${wanted.area}, over ${over}`,
    paints: paints.map((p) => p.name),
  };
}

/** The layer a mix is laid in: the first whose colour it is, alone or among others. */
export function layerOfMix(plan: Plan, mix: string): Layer | undefined {
  const uses = (l: Layer) =>
    l.colour?.kind === 'formula' &&
    l.colour.formula.parts.some((p) => p.ingredient.is.kind === 'mix' && p.ingredient.name === mix);
  return (
    plan.layers.find((l) => uses(l) && l.colour?.kind === 'formula' && l.colour.formula.parts.length === 1) ??
    plan.layers.find(uses)
  );
}

export const partsWords = (parts: readonly { readonly paint: string; readonly parts: number }[]): string =>
  parts.map((p) => `${p.parts} ${p.paint}`).join(' + ');

/** CIELAB D65/2° of a CSS Color 4 value; undefined where it cannot be read. */
export const labOfCss = (css: string): Lab | undefined => parseColour(css);

/** How thick one given glaze must lie to come nearest a colour, and in how many coats of its film. */
export function proposeFilm(
  study: Study,
  layer: Layer,
  target: Lab,
  area: string,
): { readonly film: ThicknessMatch; readonly coats: ThicknessMatch } | undefined {
  const composition = compositionOf(layer);
  const below = study.beneath(area, layer.index);
  const face = study.beneath(area, layer.index + 1)?.face;
  if (!composition || !below || !face) return undefined;
  const pigments = composition.pigments.flatMap((p) => {
    const optical = opticalData(p.pigment.id);
    return optical ? [{ optical, fraction: p.volumeFraction.likely }] : [];
  });
  if (pigments.length === 0 || pigments.length < composition.pigments.length) return undefined;
  const request = {
    target,
    pigments,
    below: below.stack,
    face,
    light: study.plan.studio.lightSource?.value,
  };
  return { film: matchThickness(request), coats: matchCoats(request, composition.dryFilm.likely) };
}
