/** Layers: their fields, and where a new field would go. */
import type { AstNode } from 'langium';
import type { LayerField, Layer as LayerNode, Named } from '../../generated/ast.ts';
import { agent, binder, ground, materialNames, nearest, solvent } from '../materials/catalogue.ts';
import { readCss } from '../optics/css.ts';
import type { Parsed, Piece } from '../syntax/chunk.ts';
import { fieldWord } from '../syntax/words.ts';
import { type Areas, areasMeant, areaUse } from './areas.ts';
import {
  type At,
  at,
  type Context,
  dayOf,
  nameUse,
  placeOf,
  problem,
  textOf,
  wordPlace,
  yearsOf,
} from './context.ts';
import { type FamilyName, filmWord, measure } from './measure.ts';
import type {
  Allow,
  ColourValue,
  FieldUse,
  Layer,
  LayerKind,
  Measure,
  NameUse,
  Place,
  Preparation,
  PrepareMethod,
} from './plan.ts';
import { formula, guess, type Reader, refer } from './scope.ts';
import { unsaid } from './unsaid.ts';

export function colourValue(
  context: Context,
  node: { readonly css: string; readonly $cstNode?: unknown } | undefined,
  where: At,
): ColourValue | undefined {
  if (!node?.css) return undefined;
  const place = placeOf(node as never, where);
  const reading = readCss(node.css);
  const valid = 'lab' in reading;
  if (!valid) problem(context, place, `${reading.fault}.`);
  return { css: node.css, place, valid };
}

export function allowOf(
  context: Context,
  rule: NameUse | undefined,
  because: { readonly text: string } | undefined,
  place: Place,
): Allow | undefined {
  if (!rule) return undefined;
  if (!because?.text.trim())
    problem(context, place, `‘allow’ needs its reason: allow ${rule.name} because "…".`);
  return { rule: rule.name, rulePlace: rule.place, because: because?.text, place };
}

const METHODS: readonly string[] = ['wipe', 'abrade', 'oil-out', 'wash'] satisfies PrepareMethod[];

function preparation(reader: Reader, node: LayerField, where: At): Preparation {
  const method = nameUse(node.choice, where);
  if (method && !METHODS.includes(method.name)) {
    const near = nearest(method.name, METHODS, 1)[0];
    problem(
      reader.context,
      method.place,
      `‘${method.name}’ is no preparation: ${METHODS.join(', ')}.`,
      near ? [{ title: `Change to ‘${near}’`, edits: [{ place: method.place, text: near }] }] : [],
    );
  }
  const use = nameUse(node.agent, where);
  return {
    method: method && METHODS.includes(method.name) ? (method.name as PrepareMethod) : undefined,
    agent: use && { ...use, ...agentOf(reader, use) },
    place: placeOf(node, where),
  };
}

type Of = NonNullable<NonNullable<Layer['medium']>['of']>;

/** A medium of the plan, else an oil or a solvent of the catalogue. */
function liquidOf(reader: Reader, use: NameUse): Of['is'] {
  const medium = reader.scope.mediums.get(use.name);
  if (medium) {
    refer(reader, 'medium', use, medium.namePlace);
    return { kind: 'medium', medium };
  }
  const oil = binder(use.name);
  if (oil) return { kind: 'binder', binder: oil };
  const spirit = solvent(use.name);
  return spirit && { kind: 'solvent', solvent: spirit };
}

const liquidsNear = (reader: Reader, use: NameUse, role: 'agent' | 'medium') =>
  guess(reader, use.name, () => [...reader.scope.mediums.keys(), ...materialNames(role)]);

function agentOf(reader: Reader, use: NameUse): Partial<NonNullable<Preparation['agent']>> {
  const is = liquidOf(reader, use);
  if (is) return { is };
  const known = agent(use.name);
  return known ? { is: { kind: 'agent', agent: known } } : { near: liquidsNear(reader, use, 'agent') };
}

function mediumOf(reader: Reader, use: NameUse): Partial<Of> {
  const is = liquidOf(reader, use);
  return is ? { is } : { near: liquidsNear(reader, use, 'medium') };
}

export function unknownMeasure(node: AstNode, where: At): Measure {
  const place = placeOf(node, where);
  return {
    value: { low: 0, likely: 0, high: 0 },
    given: 'unknown',
    unit: 'µm',
    words: 'unknown',
    place: { ...place, start: place.end - 'unknown'.length },
  };
}

type Draft = { -readonly [K in keyof Layer]: Layer[K] extends readonly (infer T)[] ? T[] : Layer[K] };

export function fieldUse(
  node: { readonly word: string; readonly $cstNode?: unknown },
  where: At,
  record: boolean,
  block: 'layer' | 'studio' | 'pigment',
): FieldUse {
  const word = fieldWord(block, node.word);
  const misplaced =
    word?.only === 'record' && !record
      ? 'not-in-plan'
      : word?.only === 'plan' && record
        ? 'not-in-record'
        : undefined;
  return {
    name: word?.word ?? node.word,
    place: placeOf(node as never, where),
    wordPlace: wordPlace(node as never, where),
    ...(misplaced ? { misplaced } : {}),
  };
}

/** Takes one field into the draft. A field given twice keeps its first value; the rule about it looks at `fields`. */
function take(reader: Reader, areas: Areas, draft: Draft, node: LayerField, where: At): void {
  const { context } = reader;
  const figure = (family: FamilyName) => measure(context, node.value, where, family);
  const uses = (list: readonly Named[]) => list.flatMap((n) => areaUse(reader, areas, n, where) ?? []);
  switch (node.word) {
    case 'on':
      if (draft.on.length === 0) {
        draft.on.push(...uses(node.areas));
        draft.except.push(...uses(node.except));
      }
      break;
    case 'prepare':
      draft.prepare.push(preparation(reader, node, where));
      break;
    case 'colour':
    case 'color': {
      const value = colourValue(context, node.colour, where);
      const mixed = formula(reader, node.formula, where, 'colour');
      if (value) draft.colour ??= { kind: 'value', value };
      else if (mixed) draft.colour ??= { kind: 'formula', formula: mixed };
      else if (node.unknown) draft.colour ??= { kind: 'unknown', place: placeOf(node, where) };
      break;
    }
    case 'medium': {
      const of = nameUse(node.choice, where);
      draft.medium ??= {
        share: figure('share'),
        of: of && { ...of, ...mediumOf(reader, of) },
        place: placeOf(node, where),
      };
      break;
    }
    case 'resin': {
      const use = nameUse(node.choice, where);
      if (use)
        draft.resin ??= {
          ...use,
          is: binder(use.name),
          ...(binder(use.name) ? {} : { near: guess(reader, use.name, () => materialNames('resin')) }),
        };
      break;
    }
    case 'material': {
      const use = nameUse(node.choice, where);
      if (use)
        draft.material ??= {
          ...use,
          is: ground(use.name),
          ...(ground(use.name) ? {} : { near: guess(reader, use.name, () => materialNames('ground')) }),
        };
      break;
    }
    case 'film':
      draft.film ??= node.unknown
        ? unknownMeasure(node, where)
        : (figure('film') ?? filmWord(context, nameUse(node.choice, where)));
      break;
    case 'coats':
      draft.coats ??= figure('count');
      break;
    case 'wipe-out':
      draft.wipeOut.push(...uses(node.areas));
      break;
    case 'wait':
      draft.wait ??= figure('days');
      break;
    case 'after':
      draft.after ??= figure('days');
      break;
    case 'painted':
      draft.painted ??= dayOf(context, node.date, where);
      break;
    case 'dry':
      draft.dry ??= dayOf(context, node.date, where);
      break;
    case 'measured': {
      const colour = colourValue(context, node.colour, where);
      if (colour) draft.measured.push({ colour, in: uses(node.areas)[0], place: placeOf(node, where) });
      break;
    }
    case 'made':
      draft.made ??= yearsOf(context, node.years, where);
      break;
    case 'evidence': {
      const words = textOf(context, node.text, where);
      if (words) draft.evidence.push(words);
      break;
    }
    case 'note': {
      const words = textOf(context, node.text, where);
      if (words) draft.notes.push(words.text);
      break;
    }
    case 'allow': {
      const allow = allowOf(
        context,
        nameUse(node.choice, where),
        textOf(context, node.text, where),
        placeOf(node, where),
      );
      if (allow) draft.allows.push(allow);
      break;
    }
  }
}

export interface LayerText {
  readonly text: string;
  readonly start: number;
  readonly end: number;
  readonly open?: number;
  readonly openMissing?: boolean;
  readonly close?: number;
  readonly description?: string;
}

/** Where a new field goes: after the last one, on a line of its own where the block has lines. */
export function insertField(chunk: LayerText, lastFieldEnd: number, uri: string): Layer['insertField'] {
  if (chunk.open === undefined || chunk.openMissing || chunk.close === undefined) return undefined;
  const { text } = chunk;
  // a comment at the end of the last field's line stays with that field
  const comment =
    /^[ \t]*(?:\/\/[^\r\n]*|\/\*[^\r\n]*?\*\/)/.exec(text.slice(lastFieldEnd - chunk.start))?.[0] ?? '';
  const at = lastFieldEnd + comment.trimEnd().length;
  const inside = text.slice(chunk.open + 1 - chunk.start, chunk.close - chunk.start);
  const place: Place = { uri, start: at, end: at };
  const line = /(\r\n|\n|\r)([ \t]*)\S/.exec(inside);
  const break_ = /(\r\n|\n|\r)/.exec(inside);
  if (line) return { place, before: `${line[1]}${line[2]}`, after: '' };
  if (break_) return { place, before: `${break_[1]}  `, after: '' };
  return inside.trim() === ''
    ? { place, before: ' ', after: inside === '' ? ' ' : '' }
    : { place, before: '   ', after: '' };
}

export function readLayer(
  reader: Reader,
  areas: Areas,
  parsed: Parsed,
  chunk: LayerText,
  index: number,
  record: boolean,
): Layer | undefined {
  const head = parsed.declaration as Piece<LayerNode> | undefined;
  if (!head?.node.word) return undefined;
  const headAt = at(reader.context.uri, chunk.start + head.base);
  const name = nameUse(head.node.called, headAt);
  const kindPlace = wordPlace(head.node, headAt);
  const draft: Draft = {
    kind: head.node.word as LayerKind,
    // a layer half-typed is called by its kind until it has a name
    name: name?.name ?? (head.node.word as string),
    index,
    place: { uri: reader.context.uri, start: chunk.start, end: chunk.end },
    namePlace: name?.place ?? { ...kindPlace, start: kindPlace.end },
    kindPlace,
    description: chunk.description,
    everywhere: false,
    ...unsaid(),
  } as unknown as Draft;
  let last = (chunk.open ?? chunk.start) + 1;
  for (const { node, base } of parsed.fields as readonly Piece<LayerField>[]) {
    if (!node.word) continue;
    const where = at(reader.context.uri, chunk.start + base);
    draft.fields.push(fieldUse(node, where, record, 'layer'));
    take(reader, areas, draft, node, where);
    if (node.unknown && !record && (node.word === 'resin' || node.word === 'material'))
      problem(
        reader.context,
        placeOf(node, where),
        'Only a record may say unknown: a plan decides.',
        [],
        'not-in-plan',
      );
    last = Math.max(last, placeOf(node, where).end);
  }
  // `on` without an area yet is half-typed: the layer lies nowhere, rather than everywhere
  const halfTyped = draft.on.length === 0 && draft.fields.some((f) => f.name === 'on');
  draft.areas = halfTyped ? [] : (areasMeant(areas, draft.on, draft.except) as string[]);
  draft.everywhere = draft.on.length === 0 && draft.except.length === 0 && !halfTyped;
  draft.insertField = insertField(chunk, last, reader.context.uri);
  return draft as Layer;
}
