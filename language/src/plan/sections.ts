/** The parts of a file besides materials, areas and layers: head, studio, support, targets, samples, notes. */
import type * as Ast from '../../generated/ast.ts';
import { materialNames, nearest, support as supportNamed } from '../materials/catalogue.ts';
import type { Piece } from '../syntax/chunk.ts';
import { type Areas, areaUse } from './areas.ts';
import { at, dayOf, nameUse, placeOf, problem, textOf, yearsOf } from './context.ts';
import { withinOf } from './declarations.ts';
import { allowOf, colourValue, fieldUse, unknownMeasure } from './layers.ts';
import { measure, numberOf } from './measure.ts';
import type { Allow, Layer, Place, Plan, PlanSupport, Sample, Studio, Target } from './plan.ts';
import { each, here, type Reading, whole } from './reading.ts';
import { guess, refer } from './scope.ts';
import { declared } from './statement.ts';

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
  const studio: Mutable<Studio> & { fields: Mutable<Studio['fields'][number]>[] } = { fields: [] };
  for (const statement of reading.statements) {
    if (statement.chunk.word !== 'studio') continue;
    studio.place ??= whole(reading, statement);
    for (const { node, base } of statement.parsed.fields as readonly Piece<Ast.StudioField>[]) {
      if (!node.word) continue;
      const where = at(reading.context.uri, statement.chunk.start + base);
      const use = fieldUse(node, where, reading.record, 'studio');
      studio.fields.push(reading.record ? { ...use, misplaced: 'not-in-record' } : use);
      const figure = (family: Parameters<typeof measure>[3]) =>
        measure(reading.context, node.value, where, family);
      const choice = nameUse(node.choice, where);
      const per = (wanted: RegExp, words: string) => {
        if (node.per !== undefined && !wanted.test(node.per))
          problem(reading.context, placeOf(node, where), `This is counted per ${words}.`);
      };
      if (node.word === 'temperature') studio.temperature ??= figure('temperature');
      else if (node.word === 'humidity') studio.humidity ??= figure('share');
      else if (node.word === 'room') studio.room ??= figure('room');
      else if (node.word === 'session') studio.session ??= figure('hours');
      else if (node.word === 'air-changes') {
        studio.airChanges ??= figure('count');
        per(/^h(our)?s?$/, 'hour');
      } else if (node.word === 'light') {
        const lux = figure('lux');
        per(/^years?$/, 'year');
        if (lux)
          studio.light ??= {
            lux,
            hoursPerYear: measure(reading.context, node.hours, where, 'hours'),
            place: placeOf(node, where),
          };
      } else if (choice && node.word === 'light-source') {
        if (choice.name === 'D65' || choice.name === 'D50' || choice.name === 'A')
          studio.lightSource ??= { value: choice.name, place: choice.place };
        else
          problem(
            reading.context,
            choice.place,
            `‘${choice.name}’ is no light source I have: D65, D50 or A.`,
          );
      } else if (choice && node.word === 'specular') {
        if (choice.name === 'included' || choice.name === 'excluded')
          studio.specular ??= { value: choice.name, place: choice.place };
        else
          problem(
            reading.context,
            choice.place,
            `Specular is ‘included’ or ‘excluded’, not ‘${choice.name}’.`,
          );
      }
    }
  }
  return studio;
}

export function readSupport(reading: Reading): PlanSupport | undefined {
  let support: PlanSupport | undefined;
  each<Ast.Support>(reading, 'support', (node, statement) => {
    const where = here(reading, statement);
    const use = nameUse(node.material, where);
    const is = use && supportNamed(use.name);
    const place = whole(reading, statement);
    const side = (text: string | undefined) => {
      if (text === undefined) return undefined;
      const figure = {
        $type: 'Figure',
        low: text,
        unit: node.unit ?? 'cm',
        $cstNode: node.$cstNode,
      } as unknown as Ast.Figure;
      const found_ = measure(reading.context, figure, where, 'size');
      return found_;
    };
    if (node.height !== undefined && node.width !== undefined && node.unit === undefined)
      problem(
        reading.context,
        { ...place, start: place.end },
        `A size needs its unit: ${node.height} x ${node.width} cm.`,
        [{ title: 'Add cm', edits: [{ place: { ...place, start: place.end }, text: ' cm' }] }],
      );
    if (node.unknown && !reading.record)
      problem(reading.context, place, 'Only a record may say unknown: a plan decides.', [], 'not-in-plan');
    if (support) problem(reading.context, place, 'A painting has one support.');
    support ??= {
      material: use && { ...use, is, ...(is ? {} : { near: nearest(use.name, materialNames('support')) }) },
      height: side(node.height),
      width: side(node.width),
      place,
    };
  });
  return support;
}

export function readTargets(reading: Reading, areas: Areas): Target[] {
  const targets: Target[] = [];
  each<Ast.Target>(reading, 'target', (node, statement) => {
    const where = here(reading, statement);
    targets.push({
      place: whole(reading, statement),
      description: statement.chunk.description,
      in: areaUse(reading.reader, areas, node.area, where),
      colour: colourValue(reading.context, node.colour, where),
      within: withinOf(reading.reader, node.within, where),
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
      ({ node: row, base: offset }): Sample['layers'][number][] => {
        const rowAt = at(reading.context.uri, statement.chunk.start + offset);
        const use = nameUse(row.layer, rowAt);
        if (!use) return [];
        const is = byName.get(use.name);
        if (is) refer(reading.reader, 'layer', use, is.namePlace);
        return [
          {
            layer: {
              ...use,
              is,
              ...(is ? {} : { near: guess(reading.reader, use.name, () => [...byName.keys()]) }),
            },
            film: row.unknown
              ? unknownMeasure(row, rowAt)
              : measure(reading.context, row.value, rowAt, 'film'),
            place: placeOf(row, rowAt),
          },
        ];
      },
    );
    const place = whole(reading, statement);
    samples.push({
      name,
      place,
      namePlace: base?.namePlace ?? place,
      description: statement.chunk.description,
      in: areaUse(reading.reader, areas, node.area, where),
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
      reading.context,
      nameUse(node.rule, where),
      textOf(reading.context, node.reason, where),
      whole(reading, statement),
    );
    if (allow) allows.push(allow);
  });
  return allows;
}
