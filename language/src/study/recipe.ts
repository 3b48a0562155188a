/**
 * What formulas come down to: pastes by volume for colours, oils and solvents by volume for mediums. Worked out once
 * for each declaration. Undefined wherever a name is unresolved, amounts cannot be added up, or something contains
 * itself: no figure is better than a figure of something else.
 */
import type { LiquidPart, PasteInput } from '../film/input.ts';
import { at, MIDDLE, paste } from '../film/paste.ts';
import { binder, solvent } from '../materials/catalogue.ts';
import type { Pigment } from '../materials/types.ts';
import type { Formula, Ingredient, Layer, Medium, Mix, OwnPigment, Paint, Part } from '../plan/plan.ts';

/** Pastes by volume, adding up to 1, with what the choice of paste assumes. */
export interface Colour {
  readonly pastes: readonly Share[];
  /** g/cm³ */
  readonly density: number;
  /** equal for equal content, whatever the file it came from */
  readonly key: string;
}

export interface Share {
  readonly paste: PasteInput;
  readonly volume: number;
  /** g/cm³ */
  readonly density: number;
  /** own pigments in it, for their swatches */
  readonly own: readonly OwnPigment[];
  /** a code used directly: a tube in linseed oil is assumed */
  readonly assumed: boolean;
  readonly key: string;
}

export interface Liquids {
  readonly name: string;
  readonly parts: readonly LiquidPart[];
  /** g/cm³ */
  readonly density: number;
  readonly key: string;
}

/** Nobody mixes mixes so deep; a text that does must not exhaust the stack. */
const DEEPEST = 200;

/** Remembers what each declaration came down to. Declarations never change once read, so nothing here goes stale. */
function remembered<K extends object, V>(make: (key: K, depth: number) => V | undefined) {
  const known = new WeakMap<K, { readonly value: V | undefined }>();
  const open = new Set<K>();
  return (key: K, depth = 0): V | undefined => {
    const found = known.get(key);
    if (found) return found.value;
    if (open.has(key) || depth > DEEPEST) return undefined;
    open.add(key);
    try {
      const value = make(key, depth);
      known.set(key, { value });
      return value;
    } finally {
      open.delete(key);
    }
  };
}

const amount = (part: Part): number => {
  const value = part.amount?.value ?? 1;
  return Number.isFinite(value) && value > 0 ? value : 0;
};

const pigmentKeys = new WeakMap<Pigment, string>();
/** Everything a study may read of a pigment: a painter's own may change in any figure. */
function pigmentKey(pigment: Pigment, own: boolean): string {
  if (!own) return pigment.id;
  const key = pigmentKeys.get(pigment) ?? JSON.stringify(pigment);
  pigmentKeys.set(pigment, key);
  return key;
}

function share(
  input: PasteInput,
  own: readonly OwnPigment[],
  ownPigments: ReadonlySet<Pigment>,
  assumed: boolean,
): Share {
  const pigments = input.pigments.map(
    (p) => `${p.mass} ${pigmentKey(p.pigment, ownPigments.has(p.pigment))}`,
  );
  const oil = input.oil ? `${input.oil.low},${input.oil.likely},${input.oil.high}` : '';
  const swatches = own.map((o) => swatchKey(o)).join(';');
  return {
    paste: input,
    volume: 1,
    density: paste(input, MIDDLE, solvent)?.density ?? 1,
    own,
    assumed,
    key: `${input.name}=${pigments.join('+')} in ${input.binder.id} ${oil}${swatches}`,
  };
}

/** The part of an own pigment that colour depends on. */
export const swatchKey = (own: OwnPigment): string =>
  own.swatches
    .map(
      (s) =>
        `${s.kind} ${s.colour.css} ${s.tint?.parts ?? ''} ${s.tint?.white.name ?? ''} ${s.film?.value.likely ?? ''}`,
    )
    .join(',');

const paintShare = remembered<Paint, Share>((paint) => {
  const { formula } = paint;
  if (!formula || formula.amounts === 'mixed' || formula.parts.length === 0) return undefined;
  const ground = paint.binder ? paint.binder.is : binder('linseed');
  if (!ground) return undefined;
  const pigments: { pigment: Pigment; mass: number }[] = [];
  const own: OwnPigment[] = [];
  const ownPigments = new Set<Pigment>();
  for (const part of formula.parts) {
    const { is } = part.ingredient;
    if (is.kind !== 'pigment') return undefined;
    if (is.own) {
      own.push(is.own);
      ownPigments.add(is.pigment);
    }
    // Dry pigment is weighed; a volume of it is turned into mass by the density of its grains.
    const mass = amount(part) * (part.amount?.kind === 'ml' ? at(is.pigment.density, 0) : 1);
    pigments.push({ pigment: is.pigment, mass });
  }
  if (!(pigments.reduce((sum, p) => sum + p.mass, 0) > 0)) return undefined;
  return share(
    { name: paint.name, pigments, binder: ground, oil: paint.oil?.value },
    own,
    ownPigments,
    false,
  );
});

/** Water-borne paints by the word of their layer's `material`; any other code used directly is a tube in linseed oil. */
const BINDER_OF: Readonly<Record<string, string>> = {
  egg: 'egg-tempera',
  'egg-white': 'egg-tempera',
  distemper: 'glue',
  gouache: 'gum-arabic',
  watercolour: 'gum-arabic',
  'acrylic-paint': 'acrylic',
};
export const tubeBinder = (material: string | undefined): string => BINDER_OF[material ?? ''] ?? 'linseed';

const tubes = new WeakMap<Pigment, Map<string, Share>>();
function tube(pigment: Pigment, own: OwnPigment | undefined, binderId: string): Share | undefined {
  const known = tubes.get(pigment) ?? new Map<string, Share>();
  tubes.set(pigment, known);
  const found = known.get(binderId);
  if (found) return found;
  const medium = binder(binderId);
  if (!medium) return undefined;
  const input = { name: own?.name ?? pigment.id, pigments: [{ pigment, mass: 1 }], binder: medium };
  const made = share(input, own ? [own] : [], new Set(own ? [pigment] : []), true);
  known.set(binderId, made);
  return made;
}

const mixColour = remembered<Mix, Colour>((mix, depth) =>
  mix.formula ? colourOf(mix.formula, 'linseed', depth + 1) : undefined,
);

function inside(
  ingredient: Ingredient,
  tubeIn: string,
  depth: number,
): Pick<Colour, 'pastes' | 'density'> | undefined {
  const { is } = ingredient;
  if (is.kind === 'mix') return mixColour(is.mix, depth);
  const one =
    is.kind === 'paint'
      ? paintShare(is.paint)
      : is.kind === 'pigment'
        ? tube(is.pigment, is.own, tubeIn)
        : undefined;
  return one && { pastes: [one], density: one.density };
}

const formulas = new WeakMap<Formula, { readonly colour: Colour | undefined }>();

/** The pastes of a colour formula; codes used directly are tubes in the binder `tubeIn`. */
export function colourOf(formula: Formula, tubeIn = 'linseed', depth = 0): Colour | undefined {
  const known = formulas.get(formula);
  if (known) return known.colour;
  const colour = sum(formula, tubeIn, depth);
  // Inside a circle or too deep the answer depends on where one came from; it is then not kept.
  if (colour) formulas.set(formula, { colour });
  return colour;
}

function sum(formula: Formula, tubeIn: string, depth: number): Colour | undefined {
  if (formula.amounts === 'mixed' || formula.parts.length === 0) return undefined;
  const found: { volume: number; inside: Pick<Colour, 'pastes' | 'density'> }[] = [];
  for (const part of formula.parts) {
    const made = inside(part.ingredient, tubeIn, depth);
    if (!made) return undefined;
    found.push({ volume: amount(part) / (part.amount?.kind === 'g' ? made.density : 1), inside: made });
  }
  const whole = found.reduce((s, f) => s + f.volume, 0);
  if (!(whole > 0) || !Number.isFinite(whole)) return undefined;
  const volumes = new Map<PasteInput, Share>();
  let density = 0;
  for (const { volume, inside: colour } of found) {
    const part = volume / whole;
    density += part * colour.density;
    for (const p of colour.pastes) {
      const before = volumes.get(p.paste)?.volume ?? 0;
      volumes.set(p.paste, { ...p, volume: before + part * p.volume });
    }
  }
  const pastes = [...volumes.values()].filter((p) => p.volume > 0);
  return { pastes, density, key: pastes.map((p) => `${p.volume}*${p.key}`).join('|') };
}

const mixHolds = remembered<Mix, boolean>((mix, depth) => holdsUnknown(mix.formula, depth + 1));

/** Whether a paint nobody knows the composition of is in a colour, however deep. */
export const holdsUnknown = (formula: Formula | undefined, depth = 0): boolean =>
  formula?.parts.some(
    ({ ingredient: { is } }) =>
      (is.kind === 'paint' && is.paint.unknown !== undefined) ||
      (is.kind === 'mix' && mixHolds(is.mix, depth) === true),
  ) ?? false;

/** True where a record names what is there and claims no proportions. */
export const withoutProportions = (formula: Formula): boolean =>
  formula.amounts === 'none' &&
  (formula.parts.length > 1 || formula.parts.some((p) => mixesParts(p.ingredient)));

const mixesParts = ({ is }: Ingredient): boolean => {
  const inner = is.kind === 'paint' ? is.paint.formula : is.kind === 'mix' ? is.mix.formula : undefined;
  return inner !== undefined && inner.amounts === 'none' && inner.parts.length > 1;
};

const liquidKey = (p: LiquidPart): string =>
  p.liquid.kind === 'binder' ? p.liquid.binder.id : p.liquid.solvent.id;
const liquidDensity = (p: LiquidPart): number =>
  at(p.liquid.kind === 'binder' ? p.liquid.binder.density : p.liquid.solvent.density, 0);

function liquids(name: string, parts: readonly LiquidPart[]): Liquids {
  const density = parts.reduce((s, p) => s + p.volume * liquidDensity(p), 0);
  return {
    name,
    parts,
    density,
    key: `${name}:${parts.map((p) => `${p.volume}*${liquidKey(p)}`).join('+')}`,
  };
}

const mediumLiquids = remembered<Medium, Liquids>((medium, depth) => {
  const { formula } = medium;
  if (!formula || formula.amounts === 'mixed' || formula.parts.length === 0) return undefined;
  const found: { volume: number; inside: Liquids }[] = [];
  for (const part of formula.parts) {
    const { is } = part.ingredient;
    const made =
      is.kind === 'binder' || is.kind === 'solvent'
        ? liquids('', [{ liquid: is, volume: 1 }])
        : is.kind === 'medium'
          ? mediumLiquids(is.medium, depth + 1)
          : undefined;
    if (!made) return undefined;
    found.push({ volume: amount(part) / (part.amount?.kind === 'g' ? made.density : 1), inside: made });
  }
  const whole = found.reduce((s, f) => s + f.volume, 0);
  if (!(whole > 0) || !Number.isFinite(whole)) return undefined;
  const volumes = new Map<string, LiquidPart>();
  for (const { volume, inside: made } of found)
    for (const p of made.parts) {
      const before = volumes.get(liquidKey(p))?.volume ?? 0;
      volumes.set(liquidKey(p), { ...p, volume: before + (volume / whole) * p.volume });
    }
  return liquids(
    medium.name,
    [...volumes.values()].filter((p) => p.volume > 0),
  );
});

/** The liquids a layer's medium is made of: a declared medium, or one oil, resin or solvent. */
export function mediumOf(medium: NonNullable<Layer['medium']>): Liquids | undefined {
  const is = medium.of?.is;
  if (!is || !medium.of) return undefined;
  return is.kind === 'medium'
    ? mediumLiquids(is.medium)
    : liquids(medium.of.name, [{ liquid: is, volume: 1 }]);
}
