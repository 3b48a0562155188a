/** What kind of film a layer is: bound in oil or in water, how much of it came with the medium. Likely values. */
import { binder } from '../../materials/catalogue.ts';
import type { BinderKind } from '../../materials/types.ts';
import type { Layer, Plan } from '../../plan/plan.ts';
import type { Composition, LayerStudy, Study } from '../../results/study.ts';
import { alkydShare, type FilmStudy, isFilm } from './beneath.ts';

const WATER: readonly BinderKind[] = ['egg', 'protein', 'gum', 'acrylic'];

/** Share of a film's binder for which `which` holds, by volume. */
export function binderShare(c: Composition, which: (kind: BinderKind, id: string) => boolean): number {
  let all = 0;
  let held = 0;
  for (const { binder: id, volumeFraction } of c.binders) {
    const kind = binder(id)?.kind;
    all += volumeFraction.likely;
    if (kind && which(kind, id)) held += volumeFraction.likely;
  }
  return all > 0 ? held / all : 0;
}

const water = new WeakMap<Composition, boolean>();
/** Egg, glue, gum and acrylic films: they are lean or not by other rules than oil films. */
export function isWaterBorne(c: Composition): boolean {
  const known = water.get(c);
  if (known !== undefined) return known;
  const is = binderShare(c, (kind) => WATER.includes(kind)) > 0.5;
  water.set(c, is);
  return is;
}

/** A film of oil, alkyd, resin, balsam or wax, whose composition is known. */
export const isOilFilm = (l: LayerStudy | undefined): l is FilmStudy =>
  isFilm(l) && !isWaterBorne(l.composition);

/** Oil paint, or a ground or layer named as one. */
export const isOily = (l: LayerStudy): boolean =>
  l.layer.material ? l.layer.material.is?.kind === 'oil' : isOilFilm(l);

export const isMostlyAlkyd = (c: Composition): boolean => alkydShare(c) > 0.5;

/** Share of the dry film that came with the medium, not with the paints. */
export const fromMedium = (c: Composition): number =>
  c.volumeSolids.likely > 0
    ? Math.min(1, (c.mediumShare.likely * c.mediumSolids) / c.volumeSolids.likely)
    : 0;

/** Share of the applied volume that evaporates. */
export const spirit = (c: Composition): number =>
  c.volatiles.reduce((sum, v) => sum + v.volumeFraction.likely, 0);

/** A layer of medium and no paint: an oiling out written as a layer. */
export const isMediumAlone = (layer: Layer): boolean =>
  layer.colour === undefined && layer.medium !== undefined && layer.material === undefined;

/** Whether another layer lies on this one on an area they share, and which kinds count. */
export const coveredBy = (
  study: Study,
  layer: Layer,
  counts: (upper: LayerStudy) => boolean = () => true,
): LayerStudy | undefined =>
  study.layers.find(
    (l) => l.layer.index > layer.index && l.areas.some((a) => layer.areas.includes(a)) && counts(l),
  );

/** ` on quince-light`, or nothing where the plan has no areas. */
export const on = (plan: Pick<Plan, 'implicitArea'>, area: string): string =>
  plan.implicitArea ? '' : ` on ${area}`;
