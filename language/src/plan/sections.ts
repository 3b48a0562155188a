/** The parts of a file besides materials, areas and layers: head, studio, support, targets, samples, notes. */
import type * as Ast from '../../generated/ast.ts';
import { materialNames, nearest, support as supportNamed } from '../materials/catalogue.ts';
import type { Piece } from '../syntax/chunk.ts';
import { type Areas, areaUse } from './areas.ts';
import { at, dayOf, nameUse, placeOf, problem, textOf, yearsOf } from './context.ts';
import { withinOf } from './declarations.ts';
import { each, type Found, here, whole } from './found.ts';
import { allowOf, colourValue, fieldUse, unknownMeasure } from './layers.ts';
import { measure, numberOf } from './measure.ts';
import type { Allow, Layer, Place, Plan, PlanSupport, Sample, Studio, Target } from './plan.ts';
import { guess, refer } from './scope.ts';
import { declared } from './unit.ts';

type Mutable<T> = { -readonly [K in keyof T]: T[K] };

export function readHead(found: Found) {
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
  for (const unit of found.units) {
    const node = unit.parsed.declaration?.node;
    const word = unit.chunk.word;
    if (
      !node ||
      (word !== 'plan' && word !== 'record' && word !== 'paintplan' && word !== 'start' && word !== 'made')
    )
      continue;
    const where = here(found, unit);
    if (word === 'plan' || word === 'record') {
      if (head.place) {
        problem(found.context, whole(found, unit), 'A file is one painting: it has one ‘plan’ or ‘record’.');
        continue;
      }
      head.kind = word;
      head.title = textOf(found.context, (node as Ast.Head).title, where)?.text;
      head.description = unit.chunk.description;
      head.place = whole(found, unit);
    } else if (word === 'paintplan') {
      const text = (node as Ast.Version).version;
      const value = text === undefined ? undefined : numberOf(found.context, text, whole(found, unit));
      if (version) problem(found.context, whole(found, unit), 'The version of the language is stated once.');
      version = whole(found, unit);
      if (value !== undefined) head.language ??= { value, place: version };
      if (value !== undefined && value !== 1)
        problem(found.context, version, `This tool reads version 1 of the language, not ${text}.`);
    } else if (word === 'start') head.start ??= dayOf(found.context, (node as Ast.Start).date, where);
    else head.made ??= yearsOf(found.context, (node as Ast.Made).years, where);
  }
  return head;
}

export function readStudio(found: Found): Studio {
  const studio: Mutable<Studio> & { fields: Mutable<Studio['fields'][number]>[] } = { fields: [] };
  for (const unit of found.units) {
    if (unit.chunk.word !== 'studio') continue;
    studio.place ??= whole(found, unit);
    for (const { node, base } of unit.parsed.fields as readonly Piece<Ast.StudioField>[]) {
      if (!node.word) continue;
      const where = at(found.context.uri, unit.chunk.start + base);
      const use = fieldUse(node, where, found.record, 'studio');
      studio.fields.push(found.record ? { ...use, misplaced: 'not-in-record' } : use);
      const figure = (family: Parameters<typeof measure>[3]) =>
        measure(found.context, node.value, where, family);
      const choice = nameUse(node.choice, where);
      const per = (wanted: RegExp, words: string) => {
        if (node.per !== undefined && !wanted.test(node.per))
          problem(found.context, placeOf(node, where), `This is counted per ${words}.`);
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
            hoursPerYear: measure(found.context, node.hours, where, 'hours'),
            place: placeOf(node, where),
          };
      } else if (choice && node.word === 'light-source') {
        if (choice.name === 'D65' || choice.name === 'D50' || choice.name === 'A')
          studio.lightSource ??= { value: choice.name, place: choice.place };
        else
          problem(found.context, choice.place, `‘${choice.name}’ is no light source I have: D65, D50 or A.`);
      } else if (choice && node.word === 'specular') {
        if (choice.name === 'included' || choice.name === 'excluded')
          studio.specular ??= { value: choice.name, place: choice.place };
        else
          problem(found.context, choice.place, `Specular is ‘included’ or ‘excluded’, not ‘${choice.name}’.`);
      }
    }
  }
  return studio;
}

export function readSupport(found: Found): PlanSupport | undefined {
  let support: PlanSupport | undefined;
  each<Ast.Support>(found, 'support', (node, unit) => {
    const where = here(found, unit);
    const use = nameUse(node.material, where);
    const is = use && supportNamed(use.name);
    const place = whole(found, unit);
    const side = (text: string | undefined) => {
      if (text === undefined) return undefined;
      const figure = {
        $type: 'Figure',
        low: text,
        unit: node.unit ?? 'cm',
        $cstNode: node.$cstNode,
      } as unknown as Ast.Figure;
      const found_ = measure(found.context, figure, where, 'size');
      return found_;
    };
    if (node.height !== undefined && node.width !== undefined && node.unit === undefined)
      problem(
        found.context,
        { ...place, start: place.end },
        `A size needs its unit: ${node.height} x ${node.width} cm.`,
        [{ title: 'Add cm', edits: [{ place: { ...place, start: place.end }, text: ' cm' }] }],
      );
    if (node.unknown && !found.record)
      problem(found.context, place, 'Only a record may say unknown: a plan decides.', [], 'not-in-plan');
    if (support) problem(found.context, place, 'A painting has one support.');
    support ??= {
      material: use && { ...use, is, ...(is ? {} : { near: nearest(use.name, materialNames('support')) }) },
      height: side(node.height),
      width: side(node.width),
      place,
    };
  });
  return support;
}

export function readTargets(found: Found, areas: Areas): Target[] {
  const targets: Target[] = [];
  each<Ast.Target>(found, 'target', (node, unit) => {
    const where = here(found, unit);
    targets.push({
      place: whole(found, unit),
      description: unit.chunk.description,
      in: areaUse(found.reader, areas, node.area, where),
      colour: colourValue(found.context, node.colour, where),
      within: withinOf(found.reader, node.within, where),
    });
  });
  return targets;
}

export function readSamples(
  found: Found,
  areas: Areas,
  layers: readonly Layer[],
  clashes: Mutable<Plan['clashes'][number]>[],
): Sample[] {
  const byName = new Map(layers.map((l) => [l.name, l]));
  const labels = new Map<string, Place>();
  const samples: Sample[] = [];
  each<Ast.Sample>(found, 'sample', (node, unit) => {
    const where = here(found, unit);
    const base = declared(found.reader, unit);
    const name = base?.name.replace(/^"|"$/g, '') ?? '';
    if (base) {
      const first = labels.get(name);
      if (first) clashes.push({ name, kind: 'sample', first, again: base.namePlace, fromUse: false });
      else labels.set(name, base.namePlace);
    }
    const rows = (unit.parsed.fields as readonly Piece<Ast.SampleRow>[]).flatMap(
      ({ node: row, base: offset }): Sample['layers'][number][] => {
        const rowAt = at(found.context.uri, unit.chunk.start + offset);
        const use = nameUse(row.layer, rowAt);
        if (!use) return [];
        const is = byName.get(use.name);
        if (is) refer(found.reader, 'layer', use, is.namePlace);
        return [
          {
            layer: {
              ...use,
              is,
              ...(is ? {} : { near: guess(found.reader, use.name, () => [...byName.keys()]) }),
            },
            film: row.unknown ? unknownMeasure(row, rowAt) : measure(found.context, row.value, rowAt, 'film'),
            place: placeOf(row, rowAt),
          },
        ];
      },
    );
    const place = whole(found, unit);
    samples.push({
      name,
      place,
      namePlace: base?.namePlace ?? place,
      description: unit.chunk.description,
      in: areaUse(found.reader, areas, node.area, where),
      layers: rows,
    });
  });
  return samples;
}

export function readNotes(found: Found): string[] {
  const notes: string[] = [];
  each<Ast.Note>(found, 'note', (node, unit) => {
    const words = textOf(found.context, node.text, here(found, unit));
    if (words) notes.push(words.text);
  });
  return notes;
}

export function readAllows(found: Found): Allow[] {
  const allows: Allow[] = [];
  each<Ast.Allow>(found, 'allow', (node, unit) => {
    const where = here(found, unit);
    const allow = allowOf(
      found.context,
      nameUse(node.rule, where),
      textOf(found.context, node.reason, where),
      whole(found, unit),
    );
    if (allow) allows.push(allow);
  });
  return allows;
}
