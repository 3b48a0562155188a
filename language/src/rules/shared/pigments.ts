/** Which word of a layer's formula brings a pigment in, and which formulas can be rewritten. */
import type { Pigment, Source } from '../../materials/types.ts';
import { insideFirst } from '../../memory/inside-first.ts';
import { layerPigments } from '../../permanence/pigments.ts';
import type { Fix, Formula, Ingredient, Layer, Part, Place } from '../../plan/plan.ts';
import type { LayerStudy, Study } from '../../results/study.ts';

type Test = (pigment: Pigment) => boolean;

export const isClear: Test = ({ transparency: { value } }) =>
  value === 'transparent' || value === 'semi-transparent';

/** Whites that hide: not chalk, barytes or china clay, which oil makes transparent. */
export const isOpaqueWhite: Test = ({ code, transparency }) =>
  (code?.startsWith('PW') ?? false) &&
  (transparency.value === 'opaque' || transparency.value === 'semi-opaque');

export const formulaOf = ({ is }: Ingredient): Formula | undefined =>
  is.kind === 'paint' ? is.paint.formula : is.kind === 'mix' ? is.mix.formula : undefined;

const inside = ({ parts }: Formula): readonly Formula[] =>
  parts.flatMap((p) => formulaOf(p.ingredient) ?? []);

/** Declarations never change once read, so nothing here goes stale. */
const known = new WeakMap<Formula, { readonly value: readonly Pigment[] | undefined }>();

/** Undefined where a formula comes back to itself, for what it holds then depends on where one begins. */
function within({ parts }: Formula, of: (inner: Formula) => readonly Pigment[] | undefined) {
  const pigments = new Set<Pigment>();
  for (const { ingredient } of parts) {
    if (ingredient.is.kind === 'pigment') pigments.add(ingredient.is.pigment);
    const inner = formulaOf(ingredient);
    const held = inner ? of(inner) : [];
    if (!held) return undefined;
    for (const pigment of held) pigments.add(pigment);
  }
  return [...pigments];
}

/** The same where mixes lead in a circle: each formula is opened once. */
function walked(root: Formula): readonly Pigment[] {
  const opened = new Set([root]);
  for (const formula of opened) for (const inner of inside(formula)) opened.add(inner);
  const pigments = new Set<Pigment>();
  for (const { parts } of opened)
    for (const { ingredient } of parts)
      if (ingredient.is.kind === 'pigment') pigments.add(ingredient.is.pigment);
  return [...pigments];
}

/** The pigments a word of a formula comes down to, each once, paints and mixes opened, those of other files too. */
export function pigmentsOf(ingredient: Ingredient): readonly Pigment[] {
  if (ingredient.is.kind === 'pigment') return [ingredient.is.pigment];
  const formula = formulaOf(ingredient);
  if (!formula) return [];
  const held = insideFirst(formula, inside, within, known) ?? walked(formula);
  known.set(formula, { value: held });
  return held;
}

export const partsWith = (layer: Layer, test: Test): readonly Part[] =>
  layer.colour?.kind === 'formula'
    ? layer.colour.formula.parts.filter((p) => pigmentsOf(p.ingredient).some(test))
    : [];

/** Where a layer names what brings the pigment in; the layer's name where that cannot be told. */
export function pigmentPlace(layer: Layer, test: Test): Place {
  const bringer = partsWith(layer, test)[0]?.ingredient;
  return bringer
    ? { ...bringer.place, end: bringer.variety?.place.end ?? bringer.place.end }
    : layer.namePlace;
}

const holders = new WeakMap<Study, ReadonlyMap<Pigment, readonly LayerStudy[]>>();

/** Every pigment with the layers it is in, bottom to top; gone through once for a study. */
function holdersIn(study: Study): ReadonlyMap<Pigment, readonly LayerStudy[]> {
  const known = holders.get(study);
  if (known) return known;
  const made = new Map<Pigment, LayerStudy[]>();
  for (const layer of study.layers)
    for (const { pigment } of layerPigments(layer)) {
      const before = made.get(pigment);
      if (before) before.push(layer);
      else made.set(pigment, [layer]);
    }
  holders.set(study, made);
  return made;
}

/** Pigments of the kind, each with the layers it is in, bottom to top. */
export const whereUsed = (study: Study, test: Test): readonly (readonly [Pigment, readonly LayerStudy[]])[] =>
  [...holdersIn(study)].filter(([pigment]) => test(pigment));

/** `PR83 (alizarin crimson)`, or the name alone where there is no code. */
export function pigmentName(pigment: Pigment): string {
  // one of the painter's own has its own name first, then those of what it is like
  const name = pigment.names.find((n) => n !== pigment.id) ?? pigment.id;
  return pigment.code ? `${pigment.id} (${name})` : name;
}

/**
 * Edits that give the parts of a formula new amounts, one for each part: a number, undefined to leave it, 0 to take it
 * out. Undefined where nothing would stay.
 */
export function withAmounts(
  formula: Formula,
  amounts: readonly (number | undefined)[],
): Fix['edits'] | undefined {
  const { parts } = formula;
  const gone = (i: number): boolean => amounts[i] === 0;
  if (parts.every((_, i) => gone(i))) return undefined;
  const edits: { place: Place; text: string }[] = [];
  let kept = false;
  parts.forEach((part, i) => {
    const before = parts[i - 1];
    const after = parts[i + 1];
    if (!gone(i)) {
      kept = true;
      const n = amounts[i];
      if (n === undefined || n === part.amount?.value) return;
      if (part.amount) edits.push({ place: part.amount.place, text: String(n) });
      else if (n !== 1) edits.push({ place: { ...part.place, end: part.place.start }, text: `${n} ` });
    } else if (kept && before)
      edits.push({ place: { ...part.place, start: before.place.end, end: part.place.end }, text: '' });
    else if (after) edits.push({ place: { ...part.place, end: after.place.start }, text: '' });
  });
  return edits;
}

/** Takes parts out of a formula; percentages of what stays are brought back to 100. */
export function withoutParts(formula: Formula, out: readonly Part[]): Fix['edits'] | undefined {
  const stay = formula.parts.filter((p) => !out.includes(p));
  if (formula.amounts !== '%')
    return withAmounts(
      formula,
      formula.parts.map((p) => (out.includes(p) ? 0 : undefined)),
    );
  const sum = stay.reduce((s, p) => s + (p.amount?.value ?? 0), 0);
  if (!(sum > 0)) return undefined;
  const shares = stay.map((p) => Math.max(1, Math.round(((p.amount?.value ?? 0) / sum) * 100)));
  const most = shares.indexOf(Math.max(...shares));
  shares[most] = (shares[most] ?? 0) + 100 - shares.reduce((s, n) => s + n, 0);
  return withAmounts(
    formula,
    formula.parts.map((p) => (out.includes(p) ? 0 : shares[stay.indexOf(p)])),
  );
}

export const isZincWhite = (p: Pigment): boolean => p.code === 'PW4';
export const isAsphalt = (p: Pigment): boolean => p.code === 'NBk6';

/** What zinc white does to an oil film, wherever it lies. */
export const zincSource: Source = {
  text: 'Mecklenburg & Tumosa, Smithsonian MCI 28-year oil-film study (figures read in a secondary article): a zinc white film of 14 years stretches about 0.3 % before it breaks, lead white about 4.5 %',
  mark: 'second-hand',
};
