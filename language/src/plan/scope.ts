/** Names of a file and of the files it uses, in maps: every look-up takes the same time however long the plan is. */
import type { Formula as FormulaNode, Ingredient as IngredientNode } from '../../generated/ast.ts';
import { binder, lookupPigment, materialNames, nearest, solvent } from '../materials/catalogue.ts';
import { isLikeCode } from '../syntax/terminals.ts';
import { type At, type Context, placeOf, problem } from './context.ts';
import { numberOf } from './measure.ts';
import type {
  AmountKind,
  Formula,
  Ingredient,
  Medium,
  Mix,
  NamedPlace,
  NameRole,
  NameUse,
  OwnPigment,
  Paint,
  Part,
  Place,
} from './plan.ts';

export interface Scope {
  readonly pigments: Map<string, OwnPigment>;
  readonly paints: Map<string, Paint>;
  readonly mediums: Map<string, Medium>;
  readonly mixes: Map<string, Mix>;
}

export const emptyScope = (): Scope => ({
  pigments: new Map(),
  paints: new Map(),
  mediums: new Map(),
  mixes: new Map(),
});

/** What a formula is made of decides which names may stand in it. */
export type FormulaKind = 'paint' | 'colour' | 'medium';

const EXPECTED: Record<FormulaKind, string> = {
  paint: 'a pigment',
  colour: 'a paint, a mix or a pigment',
  medium: 'an oil, a resin, a solvent or a medium',
};

type Is = Ingredient['is'];

export interface Reader {
  readonly context: Context;
  readonly scope: Scope;
  readonly names: NamedPlace[];
  /** how many more times near names are looked for; a text of nothing but unknown names must not take for ever */
  guesses: number;
}

/** Names a painter may have meant; none once a file has asked too often. */
export function guess(reader: Reader, name: string, candidates: () => readonly string[]): readonly string[] {
  if (reader.guesses <= 0) return [];
  reader.guesses--;
  const all = candidates();
  return nearest(name, all.length > 2000 ? all.slice(0, 2000) : all, 3);
}

/** Writes down that a name stands somewhere, in what role, and what it means. */
export function mention(
  reader: Reader,
  role: NameRole,
  use: NameUse,
  where: At,
  meant: Pick<NamedPlace, 'kind' | 'target' | 'near' | 'ingredient'>,
): void {
  reader.names.push({ name: use.name, place: use.place, role, layer: where.layer, ...meant });
}

function declared(reader: Reader, name: string): Is | undefined {
  const { pigments, paints, mediums, mixes } = reader.scope;
  const paint = paints.get(name);
  if (paint) return { kind: 'paint', paint };
  const mix = mixes.get(name);
  if (mix) return { kind: 'mix', mix };
  const medium = mediums.get(name);
  if (medium) return { kind: 'medium', medium };
  const own = pigments.get(name);
  // a pigment like one that cannot be resolved is the fault of its own declaration
  if (own)
    return own.pigment
      ? { kind: 'pigment', pigment: own.pigment, own }
      : {
          kind: 'misplaced',
          found: 'a pigment that is not complete',
          expected: 'a pigment like one of the catalogue',
        };
  return undefined;
}

function catalogued(name: string, variety: string | undefined): Is | undefined {
  const lookup = lookupPigment(name, variety);
  switch (lookup.kind) {
    case 'found':
      return { kind: 'pigment', pigment: lookup.pigment };
    case 'needs-variety':
    case 'unknown-variety':
      return { kind: 'needs-variety', choices: lookup.choices };
    case 'unknown':
      return isLikeCode(name) ? { kind: 'unknown-pigment', near: lookup.near } : undefined;
  }
}

function material(name: string): Is | undefined {
  const oil = binder(name);
  if (oil) return { kind: 'binder', binder: oil };
  const spirit = solvent(name);
  return spirit && { kind: 'solvent', solvent: spirit };
}

const FITS: Record<FormulaKind, readonly Is['kind'][]> = {
  paint: ['pigment', 'needs-variety', 'unknown-pigment'],
  colour: ['paint', 'mix', 'pigment', 'needs-variety', 'unknown-pigment'],
  medium: ['medium', 'binder', 'solvent'],
};

const CALLED: Record<string, string> = {
  paint: 'a paint',
  mix: 'a mix',
  medium: 'a medium',
  pigment: 'a pigment',
  binder: 'a binder',
  solvent: 'a solvent',
  'needs-variety': 'a pigment',
  'unknown-pigment': 'a pigment',
};

function near(reader: Reader, name: string, kind: FormulaKind): readonly string[] {
  const { pigments, paints, mixes, mediums } = reader.scope;
  const own = guess(reader, name, () =>
    kind === 'medium'
      ? [...mediums.keys(), ...materialNames('medium')]
      : [...(kind === 'colour' ? [...paints.keys(), ...mixes.keys()] : []), ...pigments.keys()],
  );
  if (own.length > 0 || kind === 'medium' || reader.guesses <= 0) return own;
  const lookup = lookupPigment(name);
  return lookup.kind === 'unknown' ? lookup.near : [];
}

function meaning(reader: Reader, name: string, variety: string | undefined, kind: FormulaKind): Is {
  const order =
    kind === 'medium'
      ? [() => material(name), () => catalogued(name, variety)]
      : [() => catalogued(name, variety), () => material(name)];
  const is = declared(reader, name) ?? order[0]?.() ?? order[1]?.();
  if (!is) return { kind: 'unknown-name', near: near(reader, name, kind) };
  if (is.kind === 'misplaced' || FITS[kind].includes(is.kind)) return is;
  return { kind: 'misplaced', found: CALLED[is.kind] ?? is.kind, expected: EXPECTED[kind] };
}

const ROLE: Record<FormulaKind, NameRole> = { paint: 'pigment', colour: 'paint', medium: 'liquid' };

/** What an ingredient means, as the list of names has it. */
function meant(found: Ingredient): Pick<NamedPlace, 'kind' | 'target' | 'near'> {
  const { is } = found;
  switch (is.kind) {
    case 'paint':
      return { kind: 'paint', target: is.paint.namePlace };
    case 'mix':
      return { kind: 'mix', target: is.mix.namePlace };
    case 'medium':
      return { kind: 'medium', target: is.medium.namePlace };
    case 'pigment':
      return { kind: 'pigment', target: is.own?.namePlace };
    case 'binder':
    case 'solvent':
      return { kind: 'material' };
    case 'unknown-name':
    case 'unknown-pigment':
      return { near: is.near };
    default:
      return {};
  }
}

export function ingredient(
  reader: Reader,
  node: IngredientNode | undefined,
  where: At,
  kind: FormulaKind,
): Ingredient | undefined {
  const name = node?.code ?? node?.name;
  if (!node || !name) return undefined;
  const whole = placeOf(node, where);
  const use: NameUse = { name, place: { ...whole, end: whole.start + name.length } };
  const variety: NameUse | undefined = node.variety?.name
    ? { name: node.variety.name, place: placeOf(node.variety, where) }
    : undefined;
  const is = meaning(reader, name, variety?.name, kind);
  const found: Ingredient = { ...use, variety, is };
  mention(reader, ROLE[kind], use, where, { ...meant(found), ingredient: found });
  return found;
}

export function formula(
  reader: Reader,
  node: FormulaNode | undefined,
  where: At,
  kind: FormulaKind,
): Formula | undefined {
  if (!node?.parts) return undefined;
  const parts: Part[] = [];
  for (const part of node.parts) {
    const resolved = ingredient(reader, part.ingredient, where, kind);
    if (!resolved) continue;
    const place = placeOf(part, where);
    const text = part.amount;
    const kindOf = amountKind(reader.context, part.unit, place);
    const amountPlace = { ...place, end: place.start + (text?.length ?? 0) };
    const value = text === undefined ? undefined : numberOf(reader.context, text, amountPlace);
    parts.push({
      ingredient: resolved,
      place,
      ...(value === undefined ? {} : { amount: { value, kind: kindOf, place: amountPlace } }),
    });
  }
  if (parts.length === 0) return undefined;
  const kinds = new Set(parts.flatMap((p) => (p.amount ? [p.amount.kind] : [])));
  const bare = parts.some((p) => !p.amount);
  // a bare name beside parts is one part; beside grams or per cent it is an amount left out
  if (bare && kinds.size > 0) kinds.add('parts');
  const amounts = kinds.size === 0 ? 'none' : kinds.size > 1 ? 'mixed' : ([...kinds][0] as AmountKind);
  return { parts, amounts, place: placeOf(node, where) };
}

function amountKind(context: Context, unit: string | undefined, place: Place): AmountKind {
  if (unit === undefined) return 'parts';
  if (unit === '%' || unit === 'g' || unit === 'ml') return unit;
  problem(context, place, `An amount is in parts (a bare number), %, g or ml, not in ${unit}.`);
  return 'parts';
}
