/** Where the solvent of the worst sitting comes from: the layer itself, or only the jar its brushes are cleaned in. */
import type { Layer, Place, Plan } from '../../plan/plan.ts';
import type { Air } from '../../results/study.ts';
import { figure, label, labelAtStart, listed } from './words.ts';

type Parts = NonNullable<Air['parts']>;

/** `13 g of turpentine and 4 g of white-spirit`; nothing where there is none. */
function grams(parts: Parts): string {
  const bySolvent = new Map<string, number>();
  for (const { solvent, grams: g } of parts) bySolvent.set(solvent, (bySolvent.get(solvent) ?? 0) + g.likely);
  return listed([...bySolvent].map(([solvent, g]) => `${figure(g)} g of ${solvent}`));
}

/** The medium of this file in which a solvent stands. */
function mediumWith(plan: Plan, solvent: string | undefined): Place | undefined {
  for (const medium of plan.mediums)
    for (const { ingredient } of medium.formula?.parts ?? [])
      if (ingredient.is.kind === 'solvent' && ingredient.is.solvent.id === solvent) return ingredient.place;
  return plan.layers.find((l) => l.medium?.of?.is?.kind === 'solvent')?.medium?.place;
}

export interface Sitting {
  /** what sets how much free, as a sentence without its end */
  readonly words: string;
  /** `at glaze ‘warm’`, or at the brush jar alone */
  readonly at: string;
  readonly place: Place;
  /** the layer, where it is to blame itself */
  readonly layer?: number;
}

export function sittingOf(plan: Plan, air: Air, layer: Layer): Sitting {
  const parts = air.parts ?? [];
  const jar = parts.filter((p) => p.from === 'brushes');
  const own = parts.filter((p) => p.from !== 'brushes');
  if (own.length === 0 && jar.length > 0)
    return {
      words: `Cleaning the brushes sets about ${grams(jar)} free at a sitting`,
      at: 'in which brushes are cleaned',
      place: mediumWith(plan, jar[0]?.solvent) ?? plan.headPlace ?? layer.namePlace,
    };
  const { medium, prepare } = layer;
  const fromPaint = own.some((p) => p.from === 'paint');
  return {
    words: `${labelAtStart(layer)} sets about ${grams(own)} free${jar.length > 0 ? `, cleaning its brushes ${grams(jar)}` : ''}`,
    at: `at ${label(layer)}`,
    place: (fromPaint ? medium?.place : undefined) ?? prepare.find((p) => p.agent)?.place ?? layer.namePlace,
    layer: layer.index,
  };
}
