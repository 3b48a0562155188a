/**
 * What formulas come down to: pastes by volume for colours, oils and solvents by volume for mediums. Worked out once
 * for each declaration. Undefined wherever a name is unresolved, amounts cannot be added up, or something contains
 * itself: no figure is better than a figure of something else.
 */
import type { LiquidPart, PasteInput } from '../film/input.ts';
import { at, MIDDLE, paste as pasteAt } from '../film/paste.ts';
import { binder, solvent } from '../materials/catalogue.ts';
import type { Pigment } from '../materials/types.ts';
import { insideFirst } from '../memory/inside-first.ts';
import type {
  Formula,
  Ingredient,
  Layer,
  Medium,
  Mix,
  OwnPigment,
  Paint,
  Part,
  Preparation,
} from '../plan/plan.ts';

/** Pastes by volume, adding up to 1, with what the choice of paste assumes. */
export interface Colour {
  readonly pastes: readonly Share[];
  /** g/cm³ */
  readonly density: number;
}

export interface Share {
  readonly paste: PasteInput;
  readonly volume: number;
  /** g/cm³ */
  readonly density: number;
  /** for each of its pigments, which of the painter's own it is, if any */
  readonly own: readonly (OwnPigment | undefined)[];
  /** a code used directly: a tube of it is assumed */
  readonly assumed: boolean;
}

export interface Liquids {
  readonly name: string;
  readonly parts: readonly LiquidPart[];
  /** g/cm³ */
  readonly density: number;
}

/** Remembers what each declaration came down to. Declarations never change once read, so nothing here goes stale. */
function remembered<K extends object, V>(
  inside: (key: K) => readonly K[],
  make: (key: K, of: (inner: K) => V | undefined) => V | undefined,
): (key: K) => V | undefined {
  const known = new WeakMap<K, { readonly value: V | undefined }>();
  return (key) => insideFirst(key, inside, make, known);
}

const nothing = (): readonly never[] => [];
const mixesIn = ({ formula }: Pick<Mix, 'formula'>): readonly Mix[] =>
  formula?.parts.flatMap(({ ingredient: { is } }) => (is.kind === 'mix' ? [is.mix] : [])) ?? [];
const mediumsIn = ({ formula }: Medium): readonly Medium[] =>
  formula?.parts.flatMap(({ ingredient: { is } }) => (is.kind === 'medium' ? [is.medium] : [])) ?? [];

const amount = (part: Part): number => {
  const value = part.amount?.value ?? 1;
  return Number.isFinite(value) && value > 0 ? value : 0;
};

const share = (paste: PasteInput, own: Share['own'], assumed: boolean): Share => ({
  paste,
  volume: 1,
  density: pasteAt(paste, MIDDLE, solvent)?.density ?? 1,
  own,
  assumed,
});

const paintShare = remembered<Paint, Share>(nothing, (paint) => {
  const { formula } = paint;
  if (!formula || formula.amounts === 'mixed' || formula.parts.length === 0) return undefined;
  const ground = paint.binder ? paint.binder.is : binder('linseed');
  if (!ground) return undefined;
  const pigments: { pigment: Pigment; mass: number }[] = [];
  const own: (OwnPigment | undefined)[] = [];
  for (const part of formula.parts) {
    const { is } = part.ingredient;
    if (is.kind !== 'pigment') return undefined;
    own.push(is.own);
    // Dry pigment is weighed; a volume of it is turned into mass by the density of its grains.
    const mass = amount(part) * (part.amount?.kind === 'ml' ? at(is.pigment.density, 0) : 1);
    pigments.push({ pigment: is.pigment, mass });
  }
  if (!(pigments.reduce((sum, p) => sum + p.mass, 0) > 0)) return undefined;
  return share({ name: paint.name, pigments, binder: ground, oil: paint.oil?.value }, own, false);
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

const tubes = new WeakMap<Pigment, Map<string, PasteInput>>();
function tube(pigment: Pigment, own: OwnPigment | undefined, binderId: string): Share | undefined {
  const known = tubes.get(pigment) ?? new Map<string, PasteInput>();
  tubes.set(pigment, known);
  const medium = binder(binderId);
  if (!medium) return undefined;
  // what is in a tube of it is the same for ever; what its swatches look like is not
  const paste = known.get(binderId) ?? { name: pigment.id, pigments: [{ pigment, mass: 1 }], binder: medium };
  known.set(binderId, paste);
  return share(paste, [own], true);
}

/** By the binder that codes used directly are tubes in. */
const mixColours = new Map<string, (mix: Mix) => Colour | undefined>();
function mixColour(mix: Mix, tubeIn: string): Colour | undefined {
  let of = mixColours.get(tubeIn);
  if (!of) {
    of = remembered(mixesIn, ({ formula }, inner) => formula && sum(formula, tubeIn, inner));
    mixColours.set(tubeIn, of);
  }
  return of(mix);
}

function inside(
  { is }: Ingredient,
  tubeIn: string,
  mixed: (mix: Mix) => Colour | undefined,
): Pick<Colour, 'pastes' | 'density'> | undefined {
  if (is.kind === 'mix') return mixed(is.mix);
  const one =
    is.kind === 'paint'
      ? paintShare(is.paint)
      : is.kind === 'pigment'
        ? tube(is.pigment, is.own, tubeIn)
        : undefined;
  return one && { pastes: [one], density: one.density };
}

/** The pastes of a colour formula; codes used directly, in mixes too, are tubes in the binder `tubeIn`. */
export const colourOf = (formula: Formula, tubeIn = 'linseed'): Colour | undefined =>
  sum(formula, tubeIn, (mix) => mixColour(mix, tubeIn));

function sum(formula: Formula, tubeIn: string, mixed: (mix: Mix) => Colour | undefined): Colour | undefined {
  if (formula.amounts === 'mixed' || formula.parts.length === 0) return undefined;
  const found: { volume: number; inside: Pick<Colour, 'pastes' | 'density'> }[] = [];
  for (const part of formula.parts) {
    const made = inside(part.ingredient, tubeIn, mixed);
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
  return { pastes: [...volumes.values()].filter((p) => p.volume > 0), density };
}

const mixHolds = remembered<Mix, boolean>(mixesIn, ({ formula }, of) => holds(formula, of));
const holds = (formula: Formula | undefined, of: (mix: Mix) => boolean | undefined): boolean =>
  formula?.parts.some(
    ({ ingredient: { is } }) =>
      (is.kind === 'paint' && is.paint.unknown !== undefined) || (is.kind === 'mix' && of(is.mix) === true),
  ) ?? false;

/** Whether a paint nobody knows the composition of is in a colour, however deep. */
export const holdsUnknown = (formula: Formula | undefined): boolean => holds(formula, mixHolds);

/** True where a record names what is there and claims no proportions. */
export const withoutProportions = (formula: Formula): boolean =>
  formula.amounts === 'none' &&
  (formula.parts.length > 1 || formula.parts.some((p) => mixesParts(p.ingredient)));

const mixesParts = ({ is }: Ingredient): boolean => {
  const inner = is.kind === 'paint' ? is.paint.formula : is.kind === 'mix' ? is.mix.formula : undefined;
  return inner !== undefined && inner.amounts === 'none' && inner.parts.length > 1;
};

const liquidId = (p: LiquidPart): string =>
  p.liquid.kind === 'binder' ? p.liquid.binder.id : p.liquid.solvent.id;
const liquidDensity = (p: LiquidPart): number =>
  at(p.liquid.kind === 'binder' ? p.liquid.binder.density : p.liquid.solvent.density, 0);

function liquids(name: string, parts: readonly LiquidPart[]): Liquids {
  const density = parts.reduce((s, p) => s + p.volume * liquidDensity(p), 0);
  return { name, parts, density };
}

const mediumLiquids = remembered<Medium, Liquids>(mediumsIn, (medium, of) => {
  const { formula } = medium;
  if (!formula || formula.amounts === 'mixed' || formula.parts.length === 0) return undefined;
  const found: { volume: number; inside: Liquids }[] = [];
  for (const part of formula.parts) {
    const { is } = part.ingredient;
    const made =
      is.kind === 'binder' || is.kind === 'solvent'
        ? liquids('', [{ liquid: is, volume: 1 }])
        : is.kind === 'medium'
          ? of(is.medium)
          : undefined;
    if (!made) return undefined;
    found.push({ volume: amount(part) / (part.amount?.kind === 'g' ? made.density : 1), inside: made });
  }
  const whole = found.reduce((s, f) => s + f.volume, 0);
  if (!(whole > 0) || !Number.isFinite(whole)) return undefined;
  const volumes = new Map<string, LiquidPart>();
  for (const { volume, inside: made } of found)
    for (const p of made.parts) {
      const before = volumes.get(liquidId(p))?.volume ?? 0;
      volumes.set(liquidId(p), { ...p, volume: before + (volume / whole) * p.volume });
    }
  return liquids(
    medium.name,
    [...volumes.values()].filter((p) => p.volume > 0),
  );
});

/** The liquids a surface is wiped with; undefined for what is no liquid of the plan or the catalogue. */
export function wipedLiquids({
  name,
  is,
}: Pick<NonNullable<Preparation['agent']>, 'name' | 'is'>): Liquids | undefined {
  if (is?.kind === 'medium') return mediumLiquids(is.medium);
  return is?.kind === 'binder' || is?.kind === 'solvent'
    ? liquids(name, [{ liquid: is, volume: 1 }])
    : undefined;
}

const someOil = binder('oil');
/** Oiled out, and not said with what. */
export const UNNAMED_OIL: Pick<NonNullable<Preparation['agent']>, 'name' | 'is'> = {
  name: 'oil',
  is: someOil && { kind: 'binder', binder: someOil },
};

/** The liquids a layer's medium is made of: a declared medium, or one oil, resin or solvent. */
export function mediumOf(medium: NonNullable<Layer['medium']>): Liquids | undefined {
  const is = medium.of?.is;
  if (!is || !medium.of) return undefined;
  return is.kind === 'medium'
    ? mediumLiquids(is.medium)
    : liquids(medium.of.name, [{ liquid: is, volume: 1 }]);
}
