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

export interface Under {
  readonly below: Film;
  readonly area: string;
}

const fattest = new WeakMap<Study, ReadonlyMap<number, Under>>();

/** For every layer the fattest film beneath it: one walk up through the layers, whatever their number. */
function fattestOfAll(study: Study): ReadonlyMap<number, Under> {
  const found = new Map<number, Under>();
  const so = new Map<string, Film>();
  for (const layer of study.layers) {
    let most: Under | undefined;
    for (const area of layer.areas) {
      const below = so.get(area);
      if (below && (!most || below.composition.fatness.likely > most.below.composition.fatness.likely))
        most = { below, area };
    }
    if (most) found.set(layer.layer.index, most);
    if (!isFilm(layer)) continue;
    for (const area of layer.areas) {
      const before = so.get(area);
      if (!before || layer.composition.fatness.likely > before.composition.fatness.likely)
        so.set(area, layer);
    }
  }
  return found;
}

/** The fattest film beneath a layer on any of its areas, with the area. Grounds count: they are films like others. */
export function fattestBelow(study: Study, layer: LayerStudy): Under | undefined {
  let all = fattest.get(study);
  if (!all) {
    all = fattestOfAll(study);
    fattest.set(study, all);
  }
  return all.get(layer.layer.index);
}

/** The layer right beneath on an area, drawings not counted. */
export function nextBelow(study: Study, layer: LayerStudy, area: string): LayerStudy | undefined {
  for (const i of layer.below.get(area) ?? []) {
    const below = study.layers[i];
    if (below && below.layer.kind !== 'drawing') return below;
  }
  return undefined;
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
