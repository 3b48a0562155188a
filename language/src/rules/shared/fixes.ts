/** Fixes as edits of the text. */
import type { FieldUse, Fix, Layer, Place, Plan } from '../../plan/plan.ts';
import { removalPlace } from '../../plan/removal.ts';

export const replace = (title: string, place: Place, text: string): Fix => ({
  title,
  edits: [{ place, text }],
});

export const replaceEach = (title: string, place: Place, words: readonly string[] | undefined): Fix[] =>
  (words ?? []).map((w) => replace(`${title} ${w}`, place, w));

/** Adds fields at the end of a layer's block; none where the block is broken. */
export function addFields(title: string, layer: Layer, fields: readonly string[]): Fix[] {
  const at = layer.insertField;
  if (!at) return [];
  return [
    { title, edits: [{ place: at.place, text: fields.map((f) => at.before + f).join('') + at.after }] },
  ];
}

/** Puts a field where another begins, before it. */
export function fieldBefore(title: string, layer: Layer, before: FieldUse | undefined, field: string): Fix[] {
  if (!before || !layer.insertField) return addFields(title, layer, [field]);
  const { place } = before.wordPlace ? { place: before.wordPlace } : before;
  return [
    { title, edits: [{ place: { ...place, end: place.start }, text: field + layer.insertField.before }] },
  ];
}

/** Takes a field or a declaration out, with its line where nothing else stands there. */
export const takeOut = (title: string, plan: Plan, place: Place): Fix =>
  replace(
    title,
    plan.text !== undefined && place.uri === plan.uri ? removalPlace(plan.text, place) : place,
    '',
  );

/** The name, or the first numbered one, that no layer has yet. */
export const freeName = (plan: Plan, wanted: string): string => {
  const taken = new Set(plan.layers.map((l) => l.name));
  for (let n = 1; ; n++) {
    const name = n === 1 ? wanted : `${wanted}-${n}`;
    if (!taken.has(name)) return name;
  }
};

const layerText = (plan: Plan, kind: string, name: string, fields: readonly string[]): string =>
  `${kind} ${freeName(plan, name)} {\n${fields.map((f) => `  ${f}\n`).join('')}}`;

/** A new layer right above one of the plan, on the same areas. */
export function layerAbove(
  plan: Plan,
  title: string,
  below: Layer,
  kind: string,
  name: string,
  material: string,
): Fix {
  const where = below.everywhere ? [] : [`on ${below.areas.join(', ')}`];
  const text = layerText(plan, kind, name, [...where, `material ${material}`]);
  return replace(title, { ...below.place, start: below.place.end }, `\n\n${text}`);
}

/** A new layer on the support itself, below all others and everywhere, as supports are sized and primed. */
export function layerOnSupport(
  plan: Plan,
  title: string,
  kind: string,
  name: string,
  material: string,
): Fix[] {
  const first = plan.layers[0];
  if (!first) return [];
  let { start } = first.place;
  // its description stays with it
  const above = /(?:^|[\r\n])([ \t]*\/\/\/[^\r\n]*(?:\r\n|\n|\r)[ \t]*)+$/.exec(
    (plan.text ?? '').slice(0, start),
  );
  if (first.description !== undefined && above) start = above.index + above[0].search(/[^\r\n]/);
  const text = layerText(plan, kind, name, [`material ${material}`]);
  return [replace(title, { ...first.place, start, end: start }, `${text}\n\n`)];
}
