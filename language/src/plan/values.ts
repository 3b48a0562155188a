/** How a value of each kind is read, in the one place for it. A kind in the tables that nothing reads does not compile. */
import type { AstNode } from 'langium';
import type * as Ast from '../../generated/ast.ts';
import { agent, binder, ground, materialNames, nearest, solvent, support } from '../materials/catalogue.ts';
import { readCss } from '../optics/css.ts';
import type { Row, ValueKind } from '../syntax/fields.ts';
import { type Areas, areasMeant, areaUse } from './areas.ts';
import {
  type At,
  type Context,
  dayOf,
  nameUse,
  placeOf,
  problem,
  replaceFix,
  textOf,
  yearsOf,
} from './context.ts';
import { filmWord, measure, numberOf, unknownMeasure } from './measure.ts';
import type {
  Allow,
  AreaUse,
  Chosen,
  ColourValue,
  FilmMeasure,
  LayerMedium,
  MaterialUse,
  Measure,
  NameRole,
  NameUse,
  Place,
  Preparation,
  PrepareMethod,
  Price,
  Quoted,
  Swatch,
  Values,
} from './plan.ts';
import { formula, guess, ingredient, mention, type Reader } from './scope.ts';

/** What a value is read with. */
export interface FieldAt {
  readonly reader: Reader;
  readonly here: At;
  readonly record: boolean;
  /** where areas may be named */
  readonly areas?: Areas;
}

/** The parts a field of the grammar can have: those of every block, and those a clause is put into. */
export type FieldNode = AstNode &
  Parts<Ast.LayerField> &
  Parts<Ast.StudioField> &
  Parts<Ast.PigmentField> & {
    readonly word: string;
    readonly ingredient?: Ast.Ingredient;
    readonly area?: Ast.Named;
    readonly price?: Ast.Price;
  };

type Parts<N> = Partial<Omit<N, keyof AstNode | 'word'>>;

/** Reads one kind of value; undefined where it is missing or cannot be read, which is then told. */
type Read<V> = (node: FieldNode, from: FieldAt, row: Row) => V | undefined;

export function colourValue(
  context: Context,
  node: Ast.Coloured | undefined,
  where: At,
): ColourValue | undefined {
  if (!node?.css) return undefined;
  const place = placeOf(node, where);
  const reading = readCss(node.css);
  const valid = 'lab' in reading;
  if (!valid) problem(context, place, `${reading.fault}.`);
  return { css: node.css, place, valid };
}

export function allowOf(
  reader: Reader,
  rule: NameUse | undefined,
  because: Quoted | undefined,
  place: Place,
  where: At,
): Allow | undefined {
  if (!rule) return undefined;
  mention(reader, 'rule', rule, where, {});
  if (!because?.text.trim())
    problem(reader.context, place, `‘allow’ needs its reason: allow ${rule.name} because "…".`);
  return { rule: rule.name, rulePlace: rule.place, because: because?.text, place };
}

type Of = NonNullable<LayerMedium['of']>;

/** A medium of the plan, an oil or a solvent of the catalogue, or (to prepare with) an agent. */
function liquid(reader: Reader, use: NameUse, role: 'medium' | 'agent', where: At) {
  const medium = reader.scope.mediums.get(use.name);
  const oil = binder(use.name);
  const spirit = solvent(use.name);
  const other = role === 'agent' ? agent(use.name) : undefined;
  const is = medium
    ? ({ kind: 'medium', medium } as const)
    : oil
      ? ({ kind: 'binder', binder: oil } as const)
      : spirit
        ? ({ kind: 'solvent', solvent: spirit } as const)
        : other && ({ kind: 'agent', agent: other } as const);
  const near = is
    ? undefined
    : guess(reader, use.name, () => [...reader.scope.mediums.keys(), ...materialNames(role)]);
  mention(reader, role, use, where, {
    kind: medium ? 'medium' : is && 'material',
    target: medium?.namePlace,
    near,
  });
  return { ...use, is, near };
}

const CATALOGUE = { binder, resin: binder, ground, support } as const;

function material(
  reader: Reader,
  use: NameUse | undefined,
  role: keyof typeof CATALOGUE,
  where: At,
): Values['material'] | undefined {
  if (!use) return undefined;
  const is = CATALOGUE[role](use.name);
  const near = is ? undefined : guess(reader, use.name, () => materialNames(role));
  mention(reader, role satisfies NameRole, use, where, { kind: is && 'material', near });
  return { ...use, is, near } as MaterialUse<never>;
}

/** Where a record says that nobody knows; a plan is told that it decides. */
export function unknownMaterial(node: AstNode, from: FieldAt): MaterialUse<never> {
  const place = placeOf(node, from.here);
  if (!from.record)
    problem(from.reader.context, place, 'Only a record may say unknown: a plan decides.', [], 'not-in-plan');
  return { name: 'unknown', place: { ...place, start: place.end - 'unknown'.length }, unknown: true };
}

function choice(
  { reader: { context } }: FieldAt,
  use: NameUse | undefined,
  row: Row,
  word: string,
): Chosen | undefined {
  if (!use || row.choices?.includes(use.name)) return use && { value: use.name, place: use.place };
  const near = nearest(use.name, row.choices ?? [], 1)[0];
  problem(
    context,
    use.place,
    `‘${use.name}’ is no ${row.noun ?? word}: ${row.choices?.join(', ')}.`,
    near ? [replaceFix(`Change to ‘${near}’`, use.place, near)] : [],
  );
  return undefined;
}

const areaUses = ({ reader, areas, here }: FieldAt, list: readonly Ast.Named[] | undefined): AreaUse[] =>
  areas ? (list ?? []).flatMap((n) => areaUse(reader, areas, n, here) ?? []) : [];

/** What the figure after `per` counts by. */
function per(from: FieldAt, node: FieldNode, wanted: RegExp, words: string): void {
  if (node.per !== undefined && !wanted.test(node.per))
    problem(from.reader.context, placeOf(node, from.here), `This is counted per ${words}.`);
}

function swatch(node: FieldNode, from: FieldAt): Swatch | undefined {
  const { reader, here } = from;
  const place = placeOf(node, here);
  const colour = colourValue(reader.context, node.colour, here);
  if (node.word !== 'tint')
    return (
      colour && {
        kind: node.word as Swatch['kind'],
        colour,
        film: measure(reader.context, node.value, here, 'film'),
        place,
      }
    );
  const white = ingredient(reader, node.white, here, 'colour');
  const [one, parts] = [node.one, node.parts].map((t) =>
    t === undefined ? undefined : numberOf(reader.context, t, place),
  );
  return colour && white && one && parts !== undefined && one > 0
    ? { kind: 'tint', colour, tint: { parts: parts / one, white }, place }
    : undefined;
}

/** Prices in different money are never added, so one without its currency counts for nothing. */
function price(context: Context, node: Ast.Price | undefined, here: At): Price | undefined {
  const amount = measure(context, node?.amount, here, 'count');
  if (!node || !amount) return undefined;
  const use = nameUse(node.currency, here);
  const currency = use?.name.toUpperCase();
  if (!use || !currency) {
    problem(
      context,
      placeOf(node, here),
      `This needs a currency: ${amount.words} and three letters such as EUR.`,
    );
    return undefined;
  }
  if (!/^[A-Z]{3}$/.test(currency)) {
    problem(context, use.place, `‘${use.name}’ is no currency: write its three letters, such as EUR.`);
    return undefined;
  }
  if (use.name !== currency)
    problem(context, use.place, `Currencies are written in capitals: ${currency}.`, [
      replaceFix(`Write ${currency}`, use.place, currency),
    ]);
  return { amount, currency, place: placeOf(node, here) };
}

const figure: Read<Measure> = (node, { reader, here }, row) =>
  measure(reader.context, node.value, here, row.unit ?? 'count');

/** `film to lightness 60 in sky`. Its thickness is the study's to find. */
function effect(node: FieldNode, from: FieldAt): FilmMeasure | undefined {
  const { context } = from.reader;
  const place = placeOf(node, from.here);
  for (const [part, right] of [
    [node.choice, 'to'],
    [node.effect, 'lightness'],
  ] as const) {
    const use = nameUse(part, from.here);
    if (!use || use.name === right) continue;
    problem(context, use.place, 'A film by its effect is written ‘film to lightness 60’.', [
      replaceFix(`Write ${right}`, use.place, right),
    ]);
    return undefined;
  }
  if (from.record) {
    problem(context, place, 'A record tells how thick a film is: write its µm, or film unknown.');
    return undefined;
  }
  const lightness = measure(context, node.lightness, from.here, 'count');
  const area = areaUses(from, node.areas)[0];
  return (
    lightness && {
      value: { low: 0, likely: 0, high: 0 },
      given: lightness.given,
      unit: 'µm',
      words: `to lightness ${lightness.words}${area ? ` in ${area.name}` : ''}`,
      place: { ...place, start: place.start + node.word.length + 1 },
      effect: { lightness, in: area },
    }
  );
}

/** Reads every kind of value there is in the tables of fields. */
export const reads: { readonly [K in ValueKind]: Read<Values[K]> } = {
  figure: (node, from, row) => {
    per(from, node, /^h(our)?s?$/, 'hour');
    return figure(node, from, row);
  },
  film: (node, from, row) =>
    node.unknown
      ? unknownMeasure(node, from.here)
      : node.effect
        ? effect(node, from)
        : (figure(node, from, row) ?? filmWord(from.reader.context, nameUse(node.choice, from.here))),
  day: (node, { reader, here }) => dayOf(reader.context, node.date, here),
  years: (node, { reader, here }) => yearsOf(reader.context, node.years, here),
  text: (node, { reader, here }) => textOf(reader.context, node.text, here),
  note: (node, { reader, here }) => textOf(reader.context, node.text, here)?.text,
  choice: (node, from, row) => choice(from, nameUse(node.choice, from.here), row, node.word),
  choices: (node, from, row) =>
    (node.choices ?? []).flatMap((n) => choice(from, nameUse(n, from.here), row, node.word) ?? []),
  area: (node, from) => areaUses(from, node.area && [node.area])[0],
  areas: (node, from) => areaUses(from, node.areas),
  extent: (node, from) => {
    const on = areaUses(from, node.areas);
    const except = areaUses(from, node.except);
    // `on` without an area yet is half-typed: the layer lies nowhere, rather than everywhere
    const areas = on.length === 0 || !from.areas ? [] : areasMeant(from.areas, on, except);
    return { on, except, areas };
  },
  preparation: (node, from, row) => {
    const method = choice(from, nameUse(node.choice, from.here), row, node.word);
    const use = nameUse(node.agent, from.here);
    return {
      method: method?.value as PrepareMethod | undefined,
      agent: use && (liquid(from.reader, use, 'agent', from.here) as Preparation['agent']),
      place: placeOf(node, from.here),
    };
  },
  formula: (node, { reader, here }, row) => formula(reader, node.formula, here, row.of ?? 'colour'),
  layerColour: (node, { reader, here }) => {
    const value = colourValue(reader.context, node.colour, here);
    if (value) return { kind: 'value', value };
    const mixed = formula(reader, node.formula, here, 'colour');
    if (mixed) return { kind: 'formula', formula: mixed };
    return node.unknown ? { kind: 'unknown', place: placeOf(node, here) } : undefined;
  },
  colour: (node, { reader, here }) => colourValue(reader.context, node.colour, here),
  measured: (node, from) => {
    const colour = colourValue(from.reader.context, node.colour, from.here);
    const place = placeOf(node, from.here);
    return colour && { colour, in: areaUses(from, node.areas)[0], place };
  },
  liquid: (node, from, row) => {
    const use = nameUse(node.choice, from.here);
    return {
      share: figure(node, from, row),
      of: use && (liquid(from.reader, use, 'medium', from.here) as Of),
      place: placeOf(node, from.here),
    };
  },
  material: (node, from, row) =>
    node.unknown
      ? unknownMaterial(node, from)
      : material(from.reader, nameUse(node.choice, from.here), row.role ?? 'ground', from.here),
  ingredient: (node, { reader, here }, row) => ingredient(reader, node.ingredient, here, row.of ?? 'colour'),
  light: (node, from) => {
    const { reader, here } = from;
    per(from, node, /^years?$/, 'year');
    const lux = measure(reader.context, node.value, here, 'lux');
    const hoursPerYear = measure(reader.context, node.hours, here, 'hours');
    return lux && { lux, hoursPerYear, place: placeOf(node, here) };
  },
  price: (node, { reader, here }) => price(reader.context, node.price, here),
  swatch,
  allow: (node, { reader, here }) =>
    allowOf(
      reader,
      nameUse(node.choice, here),
      textOf(reader.context, node.text, here),
      placeOf(node, here),
      here,
    ),
  unknown: (node, { here }) => (node.unknown ? placeOf(node, here) : undefined),
};

/** The part of a field in which a kind of value stands alone, as it does in a clause. */
export const partOf: { readonly [K in ValueKind]?: keyof FieldNode } = {
  figure: 'value',
  film: 'value',
  day: 'date',
  years: 'years',
  text: 'text',
  note: 'text',
  choice: 'choice',
  area: 'area',
  areas: 'areas',
  formula: 'formula',
  colour: 'colour',
  material: 'choice',
  ingredient: 'ingredient',
  price: 'price',
  unknown: 'unknown',
};
