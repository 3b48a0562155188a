/** The parts of a file besides materials, areas and layers: head, studio, support, targets, samples, notes. */
import type * as Ast from '../../generated/ast.ts';
import type { Piece } from '../syntax/chunk.ts';
import { sampleClauses, sampleRow, supportClauses, targetClauses } from '../syntax/clauses.ts';
import { studioFields } from '../syntax/fields.ts';
import type { Areas } from './areas.ts';
import { at, dayOf, nameUse, placeOf, problem, textOf, yearsOf } from './context.ts';
import { clausesOf, fieldInto, fieldUse } from './fill.ts';
import { measure, numberOf, unknownMeasure } from './measure.ts';
import type {
  Allow,
  FieldUse,
  Layer,
  Place,
  Plan,
  PlanSupport,
  Sample,
  SampleLayer,
  Studio,
  Target,
} from './plan.ts';
import { each, here, type Reading, whole } from './reading.ts';
import { guess, mention } from './scope.ts';
import { declared } from './statement.ts';
import { allowOf, unknownMaterial } from './values.ts';

type Mutable<T> = { -readonly [K in keyof T]: T[K] };

export function readHead(reading: Reading) {
  const head: {
    kind: Plan['kind'];
    title?: string;
    description?: string;
    place?: Place;
    language?: Plan['language'];
    start?: Plan['start'];
    made?: Plan['made'];
  } = { kind: 'palette' };
  let version: Place | undefined;
  for (const statement of reading.statements) {
    const node = statement.parsed.declaration?.node;
    const word = statement.chunk.word;
    if (
      !node ||
      (word !== 'plan' && word !== 'record' && word !== 'paintplan' && word !== 'start' && word !== 'made')
    )
      continue;
    const where = here(reading, statement);
    if (word === 'plan' || word === 'record') {
      if (head.place) {
        problem(
          reading.context,
          whole(reading, statement),
          'A file is one painting: it has one ‘plan’ or ‘record’.',
        );
        continue;
      }
      head.kind = word;
      head.title = textOf(reading.context, (node as Ast.Head).title, where)?.text;
      head.description = statement.chunk.description;
      head.place = whole(reading, statement);
    } else if (word === 'paintplan') {
      const text = (node as Ast.Version).version;
      const value =
        text === undefined ? undefined : numberOf(reading.context, text, whole(reading, statement));
      if (version)
        problem(reading.context, whole(reading, statement), 'The version of the language is stated once.');
      version = whole(reading, statement);
      if (value !== undefined) head.language ??= { value, place: version };
      if (value !== undefined && value !== 1)
        problem(reading.context, version, `This tool reads version 1 of the language, not ${text}.`);
    } else if (word === 'start') head.start ??= dayOf(reading.context, (node as Ast.Start).date, where);
    else head.made ??= yearsOf(reading.context, (node as Ast.Made).years, where);
  }
  return head;
}

export function readStudio(reading: Reading): Studio {
  const fields: Mutable<FieldUse>[] = [];
  const studio: Mutable<Studio> = { fields };
  for (const statement of reading.statements) {
    if (statement.chunk.word !== 'studio') continue;
    studio.place ??= whole(reading, statement);
    for (const { node, base } of statement.parsed.fields as readonly Piece<Ast.StudioField>[]) {
      if (!node.word) continue;
      const from = { ...reading, here: at(reading.context.uri, statement.chunk.start + base) };
      const use = fieldUse(node, from, studioFields);
      fields.push(reading.record ? { ...use, misplaced: 'not-in-record' } : use);
      fieldInto(studio, node, from, studioFields);
    }
  }
  return studio;
}

export function readSupport(reading: Reading): PlanSupport | undefined {
  let support: PlanSupport | undefined;
  each<Ast.Support>(reading, 'support', (node, statement) => {
    const from = { ...reading, here: here(reading, statement) };
    const place = whole(reading, statement);
    const side = (text: string | undefined) =>
      text === undefined
        ? undefined
        : measure(
            reading.context,
            { $type: 'Figure', low: text, unit: node.unit ?? 'cm', $cstNode: node.$cstNode } as Ast.Figure,
            from.here,
            'size',
          );
    if (node.height !== undefined && node.width !== undefined && node.unit === undefined)
      problem(
        reading.context,
        { ...place, start: place.end },
        `A size needs its unit: ${node.height} x ${node.width} cm.`,
        [{ title: 'Add cm', edits: [{ place: { ...place, start: place.end }, text: ' cm' }] }],
      );
    if (support) problem(reading.context, place, 'A painting has one support.');
    const { material } = node.unknown
      ? { material: unknownMaterial(node, from) }
      : clausesOf(from, node, { material: supportClauses.material });
    support ??= { material, height: side(node.height), width: side(node.width), place };
  });
  return support;
}

export function readTargets(reading: Reading, areas: Areas): Target[] {
  const targets: Target[] = [];
  each<Ast.Target>(reading, 'target', (node, statement) => {
    targets.push({
      place: whole(reading, statement),
      description: statement.chunk.description,
      ...clausesOf({ ...reading, areas, here: here(reading, statement) }, node, targetClauses),
    });
  });
  return targets;
}

export function readSamples(
  reading: Reading,
  areas: Areas,
  layers: readonly Layer[],
  clashes: Mutable<Plan['clashes'][number]>[],
): Sample[] {
  const byName = new Map(layers.map((l) => [l.name, l]));
  const labels = new Map<string, Place>();
  const samples: Sample[] = [];
  each<Ast.Sample>(reading, 'sample', (node, statement) => {
    const where = here(reading, statement);
    const base = declared(reading.reader, statement);
    const name = base?.name.replace(/^"|"$/g, '') ?? '';
    if (base) {
      const first = labels.get(name);
      if (first) clashes.push({ name, kind: 'sample', first, again: base.namePlace, fromUse: false });
      else labels.set(name, base.namePlace);
    }
    const rows = (statement.parsed.fields as readonly Piece<Ast.SampleRow>[]).flatMap(
      ({ node: row, base: offset }): SampleLayer[] => {
        const rowAt = at(reading.context.uri, statement.chunk.start + offset);
        const use = nameUse(row.layer, rowAt);
        if (!use) return [];
        const is = byName.get(use.name);
        const near = is ? undefined : guess(reading.reader, use.name, () => [...byName.keys()]);
        mention(reading.reader, 'layer', use, rowAt, { kind: is && 'layer', target: is?.namePlace, near });
        const film = row.unknown
          ? unknownMeasure(row, rowAt)
          : clausesOf({ ...reading, here: rowAt }, row, sampleRow).film;
        return [{ layer: { ...use, is, near }, film, place: placeOf(row, rowAt) }];
      },
    );
    const place = whole(reading, statement);
    samples.push({
      name,
      place,
      namePlace: base?.namePlace ?? place,
      description: statement.chunk.description,
      ...clausesOf({ ...reading, areas, here: where }, node, sampleClauses),
      layers: rows,
    });
  });
  return samples;
}

export function readNotes(reading: Reading): string[] {
  const notes: string[] = [];
  each<Ast.Note>(reading, 'note', (node, statement) => {
    const words = textOf(reading.context, node.text, here(reading, statement));
    if (words) notes.push(words.text);
  });
  return notes;
}

export function readAllows(reading: Reading): Allow[] {
  const allows: Allow[] = [];
  each<Ast.Allow>(reading, 'allow', (node, statement) => {
    const where = here(reading, statement);
    const allow = allowOf(
      reading.reader,
      nameUse(node.rule, where),
      textOf(reading.context, node.reason, where),
      whole(reading, statement),
      where,
    );
    if (allow) allows.push(allow);
  });
  return allows;
}
