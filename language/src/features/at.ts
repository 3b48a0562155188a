/** What stands at an offset of a plan: the smallest thing a reader would point at. */
import type {
  Area,
  FieldUse,
  Group,
  Ingredient,
  Layer,
  Medium,
  Mix,
  NamedPlace,
  OwnPigment,
  Paint,
  Place,
  Plan,
} from '../plan/plan.ts';

export type Thing =
  | { readonly kind: 'ingredient'; readonly ingredient: Ingredient; readonly place: Place }
  | { readonly kind: 'name'; readonly use: NamedPlace; readonly place: Place }
  | { readonly kind: 'paint'; readonly paint: Paint; readonly place: Place }
  | { readonly kind: 'medium'; readonly medium: Medium; readonly place: Place }
  | { readonly kind: 'mix'; readonly mix: Mix; readonly place: Place }
  | { readonly kind: 'pigment'; readonly pigment: OwnPigment; readonly place: Place }
  | { readonly kind: 'area'; readonly area: Area | Group; readonly place: Place }
  | { readonly kind: 'layer'; readonly layer: Layer; readonly place: Place }
  | {
      readonly kind: 'field';
      readonly field: string;
      readonly of: string;
      readonly layer?: Layer;
      readonly place: Place;
    }
  | { readonly kind: 'rule'; readonly rule: string; readonly place: Place };

export const inside = (place: Place | undefined, offset: number): place is Place =>
  place !== undefined && place.start <= offset && offset <= place.end;

/** The name used at an offset. They stand in the order of reading, and none overlaps another. */
function named(plan: Plan, offset: number): Thing | undefined {
  for (const use of plan.names) {
    if (use.place.uri !== plan.uri || offset < use.place.start) continue;
    const { ingredient } = use;
    const end = Math.max(use.place.end, ingredient?.variety?.place.end ?? 0);
    if (offset > end) continue;
    const place = { ...use.place, end };
    if (use.role === 'rule') return { kind: 'rule', rule: use.name, place };
    return ingredient ? { kind: 'ingredient', ingredient, place } : { kind: 'name', use, place };
  }
  return undefined;
}

const fieldAt = (
  fields: readonly FieldUse[],
  offset: number,
  of: string,
  layer?: Layer,
): Thing | undefined => {
  const f = fields.find((field) => inside(field.wordPlace, offset));
  return f && { kind: 'field', field: f.name, of, layer, place: f.wordPlace };
};

/** Undefined where nothing is declared or named. `offset` may lie outside the text. */
export function thingAt(plan: Plan, offset: number): Thing | undefined {
  const name = named(plan, offset);
  if (name) return name;
  for (const layer of plan.layers) {
    if (!inside(layer.place, offset)) continue;
    if (inside(layer.namePlace, offset) || inside(layer.kindPlace, offset))
      return { kind: 'layer', layer, place: { ...layer.kindPlace, end: layer.namePlace.end } };
    return fieldAt(layer.fields, offset, layer.kind, layer);
  }
  for (const area of [...plan.areas, ...plan.groups])
    if (!plan.implicitArea && inside(area.namePlace, offset))
      return { kind: 'area', area, place: area.namePlace };
  for (const paint of plan.paints)
    if (inside(paint.namePlace, offset)) return { kind: 'paint', paint, place: paint.namePlace };
  for (const medium of plan.mediums)
    if (inside(medium.namePlace, offset)) return { kind: 'medium', medium, place: medium.namePlace };
  for (const mix of plan.mixes)
    if (inside(mix.namePlace, offset)) return { kind: 'mix', mix, place: mix.namePlace };
  for (const pigment of plan.pigments) {
    if (inside(pigment.namePlace, offset)) return { kind: 'pigment', pigment, place: pigment.namePlace };
    const field = fieldAt(pigment.fields, offset, 'pigment');
    if (field) return field;
  }
  return fieldAt(plan.studio.fields, offset, 'studio');
}
