/** Layers on layers: who lies on whom, and where. */
import type { Layer } from '../../plan/plan.ts';
import type { Composition, LayerStudy, Study } from '../../results/study.ts';

export type FilmStudy = LayerStudy & { readonly composition: Composition };

export const isFilm = (l: LayerStudy | undefined): l is FilmStudy => l?.composition !== undefined;

/** Share of alkyd solids in a film's binder, likely. */
export const alkydShare = (c: Composition): number => {
  let all = 0;
  let alkyd = 0;
  for (const { binder, volumeFraction } of c.binders) {
    all += volumeFraction.likely;
    if (binder === 'alkyd') alkyd += volumeFraction.likely;
  }
  return all > 0 ? alkyd / all : 0;
};

/** µm of all coats, likely. */
export const filmOf = (l: LayerStudy): number => l.dryFilm?.likely ?? l.composition?.dryFilm.likely ?? 0;

interface Order {
  /** by layer: area → the layer right beneath it there */
  readonly next: readonly ReadonlyMap<string, LayerStudy>[];
  /** by area: index of the topmost layer, varnish not counted */
  readonly top: ReadonlyMap<string, number>;
}

const orders = new WeakMap<Study, Order>();

/** Walked once for a study: asking each layer for all that lies beneath it would be quadratic. */
function order(study: Study): Order {
  const known = orders.get(study);
  if (known) return known;
  const last = new Map<string, LayerStudy>();
  const top = new Map<string, number>();
  const next = study.layers.map((l) => {
    const here = new Map<string, LayerStudy>();
    for (const area of l.areas) {
      const below = last.get(area);
      if (below && below !== l) here.set(area, below);
    }
    for (const area of l.areas) {
      if (l.layer.kind !== 'drawing') last.set(area, l);
      if (l.layer.kind !== 'varnish') top.set(area, l.layer.index);
    }
    return here;
  });
  const made = { next, top };
  orders.set(study, made);
  return made;
}

/** The layer right beneath on an area, drawings not counted. */
export const nextBelow = (study: Study, layer: LayerStudy, area: string): LayerStudy | undefined =>
  order(study).next[layer.layer.index]?.get(area);

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
  layer.areas.some((a) => (order(study).top.get(a) ?? -1) > layer.index);

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
