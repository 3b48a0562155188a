/** Layers on layers: who lies on whom, and where. */
import type { Layer } from '../plan/plan.ts';
import type { Composition, LayerStudy, Study } from '../study/study.ts';

export type Film = LayerStudy & { readonly composition: Composition };

export const isFilm = (l: LayerStudy | undefined): l is Film => l?.composition !== undefined;

/** Share of alkyd solids in a film's binder, likely. */
export const alkydShare = (c: Composition): number => {
  const all = c.binders.reduce((s, b) => s + b.volumeFraction.likely, 0);
  return all > 0
    ? c.binders.filter((b) => b.binder === 'alkyd').reduce((s, b) => s + b.volumeFraction.likely, 0) / all
    : 0;
};

/** µm of all coats, likely. */
export const filmOf = (l: LayerStudy): number => l.dryFilm?.likely ?? l.composition?.dryFilm.likely ?? 0;

/** The fattest film beneath a layer on each of its areas, with the area. Grounds count: they are films like others. */
export function fattestBelow(
  study: Study,
  layer: LayerStudy,
): { readonly below: Film; readonly area: string } | undefined {
  let found: { below: Film; area: string } | undefined;
  for (const [area, indices] of layer.below)
    for (const i of indices) {
      const below = study.layers[i];
      if (
        isFilm(below) &&
        (!found || below.composition.fatness.likely > found.below.composition.fatness.likely)
      )
        found = { below, area };
    }
  return found;
}

/** The layer right beneath on an area, drawings and wiped sizes not counted. */
export function nextBelow(study: Study, layer: LayerStudy, area: string): LayerStudy | undefined {
  return (layer.below.get(area) ?? [])
    .map((i) => study.layers[i])
    .find((l) => l !== undefined && l.layer.kind !== 'drawing');
}

/** Each layer that lies right beneath, once, with an area where it does. */
export function touching(
  study: Study,
  layer: LayerStudy,
): { readonly below: LayerStudy; readonly area: string }[] {
  const seen = new Map<number, { below: LayerStudy; area: string }>();
  for (const area of layer.areas) {
    const below = nextBelow(study, layer, area);
    if (below && !seen.has(below.layer.index)) seen.set(below.layer.index, { below, area });
  }
  return [...seen.values()];
}

/** Whether something is laid on this layer anywhere, varnish not counted. */
export const isCovered = (study: Study, layer: Layer): boolean =>
  study.layers.some(
    (l) =>
      l.layer.index > layer.index &&
      l.layer.kind !== 'varnish' &&
      l.areas.some((a) => layer.areas.includes(a)),
  );

/** Volume fraction of the dry film that is pigment for which `which` holds, likely. */
export const pigmentShare = (
  c: Composition,
  which: (p: Composition['pigments'][number]['pigment']) => boolean,
): number => c.pigments.filter((p) => which(p.pigment)).reduce((s, p) => s + p.volumeFraction.likely, 0);

/** The same as a share of all pigment, by volume. */
export const shareOfPigment = (
  c: Composition,
  which: (p: Composition['pigments'][number]['pigment']) => boolean,
): number => {
  const all = pigmentShare(c, () => true);
  return all > 0 ? pigmentShare(c, which) / all : 0;
};
