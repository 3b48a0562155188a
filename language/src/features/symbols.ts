/** The outline: declarations, and layers in the order they are laid. */
import type { Declared, Place, Plan } from '../plan/plan.ts';

export interface Symbol {
  readonly name: string;
  readonly kind:
    | 'paint'
    | 'medium'
    | 'mix'
    | 'pigment'
    | 'area'
    | 'group'
    | 'layer'
    | 'sample'
    | 'area-heading';
  readonly detail: string;
  readonly place: Place;
  readonly namePlace: Place;
  readonly children: readonly Symbol[];
}

function of(
  kind: Symbol['kind'],
  list: readonly Declared[],
  detail: (d: Declared) => string = () => '',
  children: (d: Declared) => readonly Symbol[] = () => [],
): Symbol[] {
  return list
    .filter((d) => d.name)
    .map((d) => ({
      name: d.name,
      kind,
      detail: detail(d),
      place: d.place,
      namePlace: d.namePlace,
      children: children(d),
    }));
}

/** Layers stand under the first area they are laid on; those that lie everywhere stand alone. */
export function symbols(plan: Plan): Symbol[] {
  const kinds = new Map(plan.layers.map((l) => [l.namePlace.start, l.kind]));
  const layerSymbols = (layers: typeof plan.layers) =>
    of('layer', layers, (d) => kinds.get(d.namePlace.start) ?? '');
  const alone = plan.layers.filter((l) => l.everywhere || plan.implicitArea || l.areas.length === 0);
  return [
    ...of('pigment', plan.pigments),
    ...of('paint', plan.paints),
    ...of('medium', plan.mediums),
    ...of('mix', plan.mixes),
    ...(plan.implicitArea
      ? []
      : of(
          'area',
          plan.areas,
          (d) => plan.areas.find((a) => a === d)?.share?.words ?? '',
          (d) => layerSymbols(plan.layers.filter((l) => !alone.includes(l) && l.areas[0] === d.name)),
        )),
    ...of('group', plan.groups),
    ...layerSymbols(alone),
    ...of('sample', plan.samples),
  ];
}
