/** Paints, mediums, mixes, pigments of one's own: made first, filled after, since they may name one another. */
import type * as Ast from '../../generated/ast.ts';
import { binder, materialNames, nearest } from '../materials/catalogue.ts';
import type { Hazard, Lightfastness, Pigment } from '../materials/types.ts';
import type { Placeless } from '../memory/key.ts';
import type { Memo } from '../memory/memo.ts';
import type { Piece } from '../syntax/chunk.ts';
import { type At, at, nameUse, placeOf, problem } from './context.ts';
import { colourValue, fieldUse } from './layers.ts';
import { measure, numberOf } from './measure.ts';
import type { Measure, Medium, Mix, OwnPigment, Paint, Swatch } from './plan.ts';
import { formula, ingredient, type Reader } from './scope.ts';
import { type Statement, where } from './statement.ts';

type Filled<T> = { -readonly [K in keyof T]: T[K] };

export function fillPaint(reader: Reader, statement: Statement, paint: Filled<Paint>): void {
  const node = statement.parsed.declaration?.node as Ast.Paint;
  const here = where(reader, statement);
  paint.formula = formula(reader, node.formula, here, 'paint');
  if (node.unknown) paint.unknown = placeOf(node.unknown, here);
  const use = nameUse(node.binder, here);
  const is = use && binder(use.name);
  if (use) paint.binder = { ...use, is, ...(is ? {} : { near: nearest(use.name, materialNames('binder')) }) };
  paint.oil = measure(reader.context, node.oil, here, 'share');
}

export function fillMedium(reader: Reader, statement: Statement, medium: Filled<Medium>): void {
  const node = statement.parsed.declaration?.node as Ast.Medium;
  medium.formula = formula(reader, node.formula, where(reader, statement), 'medium');
}

/** ΔE00 after `within`: a bare figure. */
export function withinOf(reader: Reader, figure: Ast.Figure | undefined, here: At): Measure | undefined {
  return measure(reader.context, figure, here, 'count');
}

export function fillMix(reader: Reader, statement: Statement, mix: Filled<Mix>): void {
  const node = statement.parsed.declaration?.node as Ast.Mix;
  const here = where(reader, statement);
  mix.formula = formula(reader, node.formula, here, 'colour');
  mix.target = colourValue(reader.context, node.target, here);
  mix.within = withinOf(reader, node.within, here);
}

const LIGHTFAST: readonly string[] = ['I', 'II', 'III', 'IV', 'V'] satisfies Lightfastness[];
/** What `hazard` may name. */
export const HAZARDS: readonly string[] = [
  'lead',
  'cadmium',
  'chromium-vi',
  'arsenic',
  'mercury',
  'cobalt',
  'nickel',
  'manganese',
  'antimony',
  'copper',
  'barium',
  'selenium',
  'fine-dust',
  'silica-dust',
  'pah',
  'sensitiser',
  'toxic-if-swallowed',
  'cyanide-if-heated',
] satisfies Hazard[];

function pigmentField(reader: Reader, node: Ast.PigmentField, here: At, own: Filled<OwnPigment>): void {
  const { context } = reader;
  const place = placeOf(node, here);
  const swatches = own.swatches as Swatch[];
  switch (node.word) {
    case 'oil-absorption':
      own.oilAbsorption ??= measure(context, node.value, here, 'oilAbsorption');
      break;
    case 'density':
      own.density ??= measure(context, node.value, here, 'density');
      break;
    case 'masstone':
    case 'over-black':
    case 'over-white': {
      const colour = colourValue(context, node.colour, here);
      if (colour)
        swatches.push({ kind: node.word, colour, film: measure(context, node.value, here, 'film'), place });
      break;
    }
    case 'tint': {
      const colour = colourValue(context, node.colour, here);
      const white = ingredient(reader, node.white, here, 'colour');
      const [one, parts] = [node.one, node.parts].map((t) =>
        t === undefined ? undefined : numberOf(context, t, place),
      );
      if (colour && white && one && parts !== undefined && one > 0)
        swatches.push({ kind: 'tint', colour, tint: { parts: parts / one, white }, place });
      break;
    }
    case 'lightfast': {
      const use = nameUse(node.choice, here);
      if (use && LIGHTFAST.includes(use.name))
        own.lightfast ??= { value: use.name as Lightfastness, place: use.place };
      else if (use) problem(context, use.place, `‘${use.name}’ is no class: lightfast I, II, III, IV or V.`);
      break;
    }
    case 'hazard':
      for (const named of node.choices) {
        const use = nameUse(named, here);
        if (use && HAZARDS.includes(use.name))
          (own.hazards as { value: Hazard; place: typeof place }[]).push({
            value: use.name as Hazard,
            place: use.place,
          });
        else if (use)
          problem(context, use.place, `‘${use.name}’ is no hazard I know. There are ${HAZARDS.join(', ')}.`);
      }
      break;
  }
}

const stated = { text: 'stated in the plan', mark: 'assumption' } as const;

/** What a painter states of a pigment of their own, and the pigment it is like. */
interface Stated {
  readonly own: Pick<OwnPigment, 'name' | 'density' | 'oilAbsorption' | 'lightfast' | 'hazards'>;
  readonly base: Pigment;
  /** the file it stands in: another file may have one of that name */
  readonly uri: string;
}

/** The catalogue's pigment with the painter's own figures in their places. */
function merged({ own, base }: Placeless<Stated>): Pigment {
  const figure = (m: Placeless<Measure>) => ({ low: m.value.low, high: m.value.high, source: stated });
  const usable = (m: Placeless<Measure> | undefined): m is Placeless<Measure> =>
    m !== undefined && m.value.low > 0;
  return {
    ...base,
    id: own.name,
    names: [own.name, ...base.names],
    density: usable(own.density) ? figure(own.density) : base.density,
    oilAbsorption: usable(own.oilAbsorption) ? figure(own.oilAbsorption) : base.oilAbsorption,
    paintOil: usable(own.oilAbsorption) ? undefined : base.paintOil,
    lightfastness: own.lightfast ? { value: own.lightfast.value, source: stated } : base.lightfastness,
    hazards: [...new Set([...base.hazards, ...own.hazards.map((h) => h.value)])],
  };
}

/** Own pigments may be like one another; one that is like itself stays without a catalogue pigment. */
export function fillPigment(
  reader: Reader,
  statement: Statement,
  own: Filled<OwnPigment>,
  record: boolean,
  memo: Memo<Pigment>,
): void {
  const node = statement.parsed.declaration?.node as Ast.OwnPigment;
  own.like = ingredient(reader, node.like, where(reader, statement), 'paint');
  for (const { node: field, base } of statement.parsed.fields as readonly Piece<Ast.PigmentField>[]) {
    if (!field.word) continue;
    const here = at(reader.context.uri, statement.chunk.start + base);
    (own.fields as unknown[]).push(fieldUse(field, here, record, 'pigment'));
    pigmentField(reader, field, here, own);
  }
  const like = own.like?.is;
  if (like?.kind !== 'pigment') return;
  const { name, density, oilAbsorption, lightfast, hazards } = own;
  own.pigment = memo.get<Stated>(
    { own: { name, density, oilAbsorption, lightfast, hazards }, base: like.pigment, uri: own.place.uri },
    merged,
  );
}
