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

const freeName = (plan: Plan, wanted: string): string => {
  const taken = new Set(plan.layers.map((l) => l.name));
  for (let n = 1; ; n++) {
    const name = n === 1 ? wanted : `${wanted}-${n}`;
    if (!taken.has(name)) return name;
  }
};

/** A new layer right above (or right below) one of the plan, on the same areas. */
export function newLayer(
  plan: Plan,
  title: string,
  beside: Layer,
  at: 'after' | 'before',
  kind: string,
  name: string,
  material: string,
): Fix {
  const where = beside.everywhere ? '' : `  on ${beside.areas.join(', ')}\n`;
  const text = `${kind} ${freeName(plan, name)} {\n${where}  material ${material}\n}`;
  const { uri, start, end } = beside.place;
  return at === 'after'
    ? { title, edits: [{ place: { uri, start: end, end }, text: `\n\n${text}` }] }
    : { title, edits: [{ place: { uri, start, end: start }, text: `${text}\n\n` }] };
}
