/** What stands at an offset of a plan: the smallest thing a reader would point at. */
import type {
  Area,
  Formula,
  Group,
  Ingredient,
  Layer,
  Medium,
  Mix,
  NameUse,
  OwnPigment,
  Paint,
  Place,
  Plan,
  Sample,
} from '../plan/plan.ts';

export type Thing =
  | { readonly kind: 'ingredient'; readonly ingredient: Ingredient; readonly place: Place }
  | { readonly kind: 'name'; readonly use: NameUse; readonly place: Place }
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

function inFormula(formula: Formula | undefined, offset: number): Thing | undefined {
  if (!formula || !inside(formula.place, offset)) return undefined;
  for (const { ingredient } of formula.parts) {
    const place = {
      ...ingredient.place,
      end: Math.max(ingredient.place.end, ingredient.variety?.place.end ?? 0),
    };
    if (inside(place, offset)) return { kind: 'ingredient', ingredient, place };
  }
  return undefined;
}

function inLayer(layer: Layer, offset: number): Thing | undefined {
  const names: (NameUse | undefined)[] = [
    ...layer.on,
    ...layer.except,
    ...layer.wipeOut,
    ...layer.prepare.map((p) => p.agent),
    ...layer.measured.map((m) => m.in),
    layer.medium?.of,
    layer.resin,
    layer.material,
  ];
  const word = layer.colour?.kind === 'formula' ? inFormula(layer.colour.formula, offset) : undefined;
  if (word) return word;
  for (const use of names)
    if (use && inside(use.place, offset)) return { kind: 'name', use, place: use.place };
  for (const allow of layer.allows)
    if (inside(allow.rulePlace, offset)) return { kind: 'rule', rule: allow.rule, place: allow.rulePlace };
  for (const f of layer.fields)
    if (inside(f.wordPlace, offset))
      return { kind: 'field', field: f.name, of: layer.kind, layer, place: f.wordPlace };
  if (inside(layer.namePlace, offset) || inside(layer.kindPlace, offset))
    return { kind: 'layer', layer, place: { ...layer.kindPlace, end: layer.namePlace.end } };
  return undefined;
}

function inSample(sample: Sample, offset: number): Thing | undefined {
  const use = [sample.in, ...sample.layers.map((l) => l.layer)].find((u) => u && inside(u.place, offset));
  return use ? { kind: 'name', use, place: use.place } : undefined;
}

function inDeclarations(plan: Plan, offset: number): Thing | undefined {
  for (const paint of plan.paints) {
    if (!inside(paint.place, offset)) continue;
    if (inside(paint.namePlace, offset)) return { kind: 'paint', paint, place: paint.namePlace };
    if (paint.binder && inside(paint.binder.place, offset))
      return { kind: 'name', use: paint.binder, place: paint.binder.place };
    return inFormula(paint.formula, offset);
  }
  for (const medium of plan.mediums) {
    if (!inside(medium.place, offset)) continue;
    return inside(medium.namePlace, offset)
      ? { kind: 'medium', medium, place: medium.namePlace }
      : inFormula(medium.formula, offset);
  }
  for (const mix of plan.mixes) {
    if (!inside(mix.place, offset)) continue;
    return inside(mix.namePlace, offset)
      ? { kind: 'mix', mix, place: mix.namePlace }
      : inFormula(mix.formula, offset);
  }
  for (const pigment of plan.pigments) {
    if (!inside(pigment.place, offset)) continue;
    if (pigment.like && inside(pigment.like.place, offset))
      return { kind: 'ingredient', ingredient: pigment.like, place: pigment.like.place };
    return inside(pigment.namePlace, offset)
      ? { kind: 'pigment', pigment, place: pigment.namePlace }
      : undefined;
  }
  return undefined;
}

/** Undefined where nothing is declared or named. `offset` may lie outside the text. */
export function thingAt(plan: Plan, offset: number): Thing | undefined {
  for (const layer of plan.layers) if (inside(layer.place, offset)) return inLayer(layer, offset);
  for (const sample of plan.samples) if (inside(sample.place, offset)) return inSample(sample, offset);
  for (const area of [...plan.areas, ...plan.groups])
    if (!plan.implicitArea && inside(area.namePlace, offset))
      return { kind: 'area', area, place: area.namePlace };
  for (const group of plan.groups) {
    const member = group.members.find((m) => inside(m.place, offset));
    if (member) return { kind: 'name', use: member, place: member.place };
  }
  for (const target of plan.targets)
    if (target.in && inside(target.in.place, offset))
      return { kind: 'name', use: target.in, place: target.in.place };
  const material = plan.support?.material;
  if (material && inside(material.place, offset))
    return { kind: 'name', use: material, place: material.place };
  for (const allow of plan.allows)
    if (inside(allow.rulePlace, offset)) return { kind: 'rule', rule: allow.rule, place: allow.rulePlace };
  for (const f of plan.studio.fields)
    if (inside(f.wordPlace, offset))
      return { kind: 'field', field: f.name, of: 'studio', place: f.wordPlace };
  return inDeclarations(plan, offset);
}
