/** Preparations a fix may propose before a layer, and where they are written. */
import { binder, solvent } from '../../materials/catalogue.ts';
import type { Hazard } from '../../materials/types.ts';
import type { Fix, Layer, Plan, Preparation, PrepareMethod } from '../../plan/plan.ts';
import type { LayerStudy, Study } from '../../results/study.ts';
import { liquidsOfMedium } from '../../studio/recipe.ts';
import { filmOf, isFilm, nextBelow, shareOfPigment } from './beneath.ts';
import { fieldBefore, replace, takeOut } from './fixes.ts';

/** Dust of these is never to be made. */
export const POISONOUS_DUST: readonly Hazard[] = ['lead', 'cadmium', 'chromium-vi', 'arsenic', 'mercury'];
/** Dust of these makes skin or lungs sensitive: wet, and lightly. */
export const SENSITISING_DUST: readonly Hazard[] = ['cobalt', 'nickel'];

/** What a light rub may reach: it breaks through films thinner than this (µm) in all. */
const REACH_UM = 10;

/** Every layer a rub over `layer`'s areas reaches, with the area; its own earlier coats among them. */
export function reached(study: Study, layer: LayerStudy): { below: LayerStudy; area: string }[] {
  const lower = new Map<number, { below: LayerStudy; area: string }>();
  if (layer.coats > 1) lower.set(layer.layer.index, { below: layer, area: layer.areas[0] ?? '' });
  for (const area of layer.areas) {
    let depth = 0;
    let below = nextBelow(study, layer, area);
    while (below && depth < REACH_UM) {
      if (!lower.has(below.layer.index)) lower.set(below.layer.index, { below, area });
      depth += filmOf(below);
      below = nextBelow(study, below, area);
    }
  }
  return [...lower.values()];
}

/** Share of a layer's pigment, by volume, whose dust has one of these hazards. */
export const hazardShare = (l: LayerStudy, hazards: readonly Hazard[]): number =>
  isFilm(l) ? shareOfPigment(l.composition, (p) => p.hazards.some((h) => hazards.includes(h))) : 0;

export const mayAbrade = (study: Study, layer: LayerStudy): boolean =>
  reached(study, layer).every(({ below }) => hazardShare(below, POISONOUS_DUST) === 0);

/** The first drying oil of the layer's own film, else one of the trade's usual for the purpose. */
export function oilFor(l: LayerStudy): string {
  const oils = isFilm(l) ? l.composition.binders.map((b) => binder(b.binder)) : [];
  return oils.find((b) => b?.kind === 'drying oil' && b.id !== 'oil')?.id ?? 'walnut';
}

/** A spirit the plan has already, else one of little smell. */
export function spiritFor(plan: Pick<Plan, 'visible'>): string {
  for (const medium of plan.visible.mediums.values())
    for (const { liquid } of liquidsOfMedium(medium) ?? [])
      if (liquid.kind === 'solvent' && SPIRITS.includes(liquid.solvent.id)) return liquid.solvent.id;
  return solvent('odourless-spirit')?.id ?? 'turpentine';
}
const SPIRITS = ['odourless-spirit', 'white-spirit', 'turpentine'];

/** Writes a preparation before the layer's colour. */
export const addPreparation = (title: string, layer: Layer, text: string): Fix[] =>
  fieldBefore(
    title,
    layer,
    layer.fields.find((f) => f.name === 'colour') ?? layer.fields.find((f) => f.name === 'medium'),
    text,
  );

/** Another preparation in place of one that does harm; where the layer has one of its kind already, the harm is left out. */
export const prepareInstead = (
  plan: Plan,
  layer: Layer,
  wrong: Preparation,
  title: string,
  method: PrepareMethod,
  agent?: string,
): Fix =>
  layer.prepare.some((p) => p !== wrong && p.method === method)
    ? takeOut('Leave it out', plan, wrong.place)
    : replace(title, wrong.place, `prepare ${method}${agent ? ` with ${agent}` : ''}`);
