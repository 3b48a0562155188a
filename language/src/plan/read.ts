/**
 * Text to Plan. Each declaration is parsed alone and remembered by its text, so a keystroke costs one declaration; then
 * names are resolved through maps. Never throws on any text.
 */
import type * as Ast from '../../generated/ast.ts';
import { insideFirst } from '../memory/inside-first.ts';
import { nameFault } from '../syntax/name-fault.ts';
import { isLayerWord } from '../syntax/words.ts';
import type { Areas } from './areas.ts';
import { circles } from './circles.ts';
import { type Context, problem, textOf } from './context.ts';
import { fillMaterial } from './declarations.ts';
import { loneHost, type PlanHost } from './host.ts';
import { readLayer } from './layers.ts';
import { createPlanMemo, type PlanMemo } from './memo.ts';
import type { Area, Layer, Medium, Mix, NamedPlace, OwnPigment, Paint, Place, Plan, Use } from './plan.ts';
import { readAreas } from './read-areas.ts';
import { each, here, type Reading, whole } from './reading.ts';
import { emptyScope, type Reader, type Scope } from './scope.ts';
import {
  readAllows,
  readHead,
  readNotes,
  readSamples,
  readStudio,
  readSupport,
  readTargets,
} from './sections.ts';
import { declared, type Statement } from './statement.ts';
import { readStatements, settled } from './statements.ts';
import { type Surroundings, surround, surroundings, wordedAs } from './surroundings.ts';

export { createPlanMemo, type PlanMemo };

/** The deepest chain of `use` that is followed. */
const DEEPEST = 20;

/** The most files one plan may bring in. */
const MOST_FILES = 200;

export function readPlan(
  text: string,
  uri: string,
  host: PlanHost = loneHost,
  memo: PlanMemo = createPlanMemo(),
): Plan {
  memo.parsed.turn();
  memo.pigments.turn();
  memo.used = new Map();
  const plan = readFile(text, uri, host, memo, [uri]);
  // a run over many files must not keep them all
  for (const file of memo.surroundings.keys())
    if (file !== uri && !memo.used.has(file)) memo.surroundings.delete(file);
  return plan;
}

function readFile(text: string, uri: string, host: PlanHost, memo: PlanMemo, chain: readonly string[]): Plan {
  const context: Context = { uri, problems: [] };
  const statements = readStatements(text, memo, context);
  const faulty = context.problems.length;
  const scope = emptyScope();
  const names: NamedPlace[] = [];
  const reader: Reader = { context, scope, names, guesses: 200 };
  const record = statements.some((u) => u.chunk.word === 'record');
  const reading: Reading = { context, reader, statements, record };

  const clashes: Plan['clashes'][number][] = [];
  const own = declareMaterials(reading, scope, clashes);
  const uses = readUses(reading, host, memo, chain);
  bringIn(uses, scope, clashes);
  inOrder(own.pigments, (statement, pigment) =>
    fillMaterial(reader, statement, 'pigment', pigment, record, memo.pigments),
  );
  for (const [statement, paint] of own.paints)
    fillMaterial(reader, statement, 'paint', paint, record, memo.pigments);
  for (const [statement, medium] of own.mediums)
    fillMaterial(reader, statement, 'medium', medium, record, memo.pigments);
  for (const [statement, mix] of own.mixes)
    fillMaterial(reader, statement, 'mix', mix, record, memo.pigments);

  const { areas, groups, names: areaNames } = readAreas(reading, clashes);
  const implicit = areas.length === 0;
  const everything: Area = {
    name: 'everything',
    place: { uri, start: 0, end: 0 },
    namePlace: { uri, start: 0, end: 0 },
    share: {
      value: { low: 1, likely: 1, high: 1 },
      given: 'exact',
      unit: 'fraction',
      words: '100 %',
      place: { uri, start: 0, end: 0 },
    },
  };
  if (implicit && !areaNames.has(everything.name))
    areaNames.set(everything.name, { areas: [everything.name], kind: 'area', place: everything.namePlace });
  const listed = implicit ? [everything] : areas;
  const all = listed.map((a) => a.name);
  const where: Areas = { names: areaNames, all, order: new Map(all.map((a, i) => [a, i])) };
  const around = surroundings(statements, uses, memo.surroundings.get(uri));
  memo.surroundings.set(uri, around);
  const layers = readLayers(reading, text, where, clashes, around);
  const head = readHead(reading);
  const plan: Plan = {
    uri,
    text,
    kind: head.kind,
    title: head.title,
    description: head.description,
    headPlace: head.place,
    language: head.language,
    start: head.start,
    made: head.made,
    studio: readStudio(reading),
    support: readSupport(reading),
    areas: listed,
    implicitArea: implicit,
    groups,
    pigments: own.pigments.map(([, p]) => p),
    paints: own.paints.map(([, p]) => p),
    mediums: own.mediums.map(([, m]) => m),
    mixes: own.mixes.map(([, m]) => m),
    layers,
    targets: readTargets(reading, where),
    samples: readSamples(reading, where, layers, clashes),
    notes: readNotes(reading),
    allows: readAllows(reading),
    uses,
    visible: scope,
    clashes,
    problems: settled(text, context.problems, faulty),
    circles: circles([...own.mixes.map(([, m]) => m), ...own.mediums.map(([, m]) => m)]),
    names,
  };
  return surround(plan, around);
}

type Mutable<T> = { -readonly [K in keyof T]: T[K] };

/** Own pigments, each after the one of this file that it is like. */
function inOrder(
  pigments: readonly (readonly [Statement, Mutable<OwnPigment>])[],
  fill: (statement: Statement, pigment: Mutable<OwnPigment>) => void,
): void {
  const byName = new Map(pigments.toReversed().map((own) => [own[1].name, own]));
  const answers = new Map<(typeof pigments)[number], { readonly value: true | undefined }>();
  const like = ([{ parsed }]: (typeof pigments)[number]) => {
    const node = parsed.declaration?.node as Ast.OwnPigment | undefined;
    const own = byName.get(node?.like?.name ?? '');
    return own ? [own] : [];
  };
  const read = ([statement, pigment]: (typeof pigments)[number]): true => {
    fill(statement, pigment);
    return true;
  };
  for (const own of pigments) insideFirst(own, like, read, answers);
}

function declareMaterials(reading: Reading, scope: Scope, clashes: Mutable<Plan['clashes'][number]>[]) {
  const taken = new Map<string, Place>();
  const pigments: [Statement, Mutable<OwnPigment>][] = [];
  const paints: [Statement, Mutable<Paint>][] = [];
  const mediums: [Statement, Mutable<Medium>][] = [];
  const mixes: [Statement, Mutable<Mix>][] = [];
  for (const statement of reading.statements) {
    const word = statement.chunk.word;
    if (word !== 'pigment' && word !== 'paint' && word !== 'medium' && word !== 'mix') continue;
    if (!statement.parsed.declaration) continue;
    const base = declared(reading.reader, statement);
    if (!base) continue;
    const fault = nameFault(base.name, true);
    if (fault) problem(reading.context, base.namePlace, fault);
    const first = taken.get(base.name);
    if (first) clashes.push({ name: base.name, kind: word, first, again: base.namePlace, fromUse: false });
    else taken.set(base.name, base.namePlace);
    if (word === 'pigment') {
      const own: Mutable<OwnPigment> = { ...base, swatches: [], hazards: [], fields: [] };
      pigments.push([statement, own]);
      if (!first) scope.pigments.set(own.name, own);
    } else if (word === 'paint') {
      const own: Mutable<Paint> = { ...base };
      paints.push([statement, own]);
      if (!first) scope.paints.set(own.name, own);
    } else if (word === 'medium') {
      const own: Mutable<Medium> = { ...base };
      mediums.push([statement, own]);
      if (!first) scope.mediums.set(own.name, own);
    } else {
      const own: Mutable<Mix> = { ...base };
      mixes.push([statement, own]);
      if (!first) scope.mixes.set(own.name, own);
    }
  }
  return { pigments, paints, mediums, mixes };
}

/** As it is called on the disk. */
function fileName(uri = ''): string {
  const name = uri.split('/').at(-1) ?? '';
  try {
    return decodeURIComponent(name);
  } catch {
    return name;
  }
}

function readUses(reading: Reading, host: PlanHost, memo: PlanMemo, chain: readonly string[]): Use[] {
  const uses: Use[] = [];
  each<Ast.Use>(reading, 'use', (node, statement) => {
    const path = textOf(reading.context, node.path, here(reading, statement));
    if (!path) return;
    const base = { path: path.text, pathPlace: path.place, place: whole(reading, statement) };
    const target = host.resolve(path.text, reading.context.uri);
    if ('outside' in target) uses.push({ ...base, status: 'outside' });
    else if (chain.includes(target.uri))
      uses.push({
        ...base,
        status: 'cycle',
        uri: target.uri,
        detail: [...chain.slice(chain.indexOf(target.uri)), target.uri].map(fileName).join(' → '),
      });
    else if (chain.length > DEEPEST || memo.used.size >= MOST_FILES)
      uses.push({
        ...base,
        status: 'unreadable',
        uri: target.uri,
        overLimit: true,
        detail:
          chain.length > DEEPEST
            ? `no more than ${DEEPEST} files are followed in a row; ‘${fileName(chain.at(-1))}’ is the last that is read`
            : `no more than ${MOST_FILES} files are read for one plan; ‘${fileName([...memo.used.keys()].at(-1))}’ is the last`,
      });
    else {
      const known = memo.used.get(target.uri);
      const read = known ? { text: '' } : host.read(target.uri);
      if ('failed' in read) uses.push({ ...base, status: read.failed, uri: target.uri, detail: read.detail });
      else {
        const plan = known ?? readFile(read.text, target.uri, host, memo, [...chain, target.uri]);
        memo.used.set(target.uri, plan);
        const beyond = plan.uses.map((u) => (u.overLimit ? u : u.beyond)).find((u) => u !== undefined);
        uses.push({ ...base, status: 'read', uri: target.uri, plan, beyond });
      }
    }
  });
  return uses;
}

/** Names of used files come after the file's own, and the first file wins; what is shadowed is a clash to be reported. */
function bringIn(uses: readonly Use[], scope: Scope, clashes: Mutable<Plan['clashes'][number]>[]): void {
  const all = [scope.pigments, scope.paints, scope.mediums, scope.mixes] as const;
  const taken = (name: string) => all.map((m) => m.get(name)).find((x) => x !== undefined);
  for (const use of uses) {
    if (!use.plan) continue;
    const { pigments, paints, mediums, mixes } = use.plan.visible;
    const bring = <T extends { readonly name: string; readonly namePlace: Place }>(
      from: ReadonlyMap<string, T>,
      to: Map<string, T>,
      kind: string,
    ) => {
      for (const [name, thing] of from) {
        const mine = taken(name);
        if (!mine) to.set(name, thing);
        else if (mine.namePlace.uri !== thing.namePlace.uri || mine.namePlace.start !== thing.namePlace.start)
          clashes.push({
            name,
            kind,
            first: thing.namePlace,
            again: mine.namePlace.uri === use.place.uri ? mine.namePlace : use.pathPlace,
            fromUse: true,
          });
      }
    };
    bring(pigments, scope.pigments, 'pigment');
    bring(paints, scope.paints, 'paint');
    bring(mediums, scope.mediums, 'medium');
    bring(mixes, scope.mixes, 'mix');
  }
}

function readLayers(
  reading: Reading,
  text: string,
  areas: Areas,
  clashes: Mutable<Plan['clashes'][number]>[],
  around: Surroundings,
): Layer[] {
  const layers: Layer[] = [];
  const first = new Map<string, Place>();
  for (const { chunk, parsed: p } of reading.statements) {
    if (!isLayerWord(chunk.word)) continue;
    const layer = readLayer(
      reading.reader,
      areas,
      p,
      { ...chunk, text: text.slice(chunk.start, chunk.end) },
      layers.length,
      reading.record,
    );
    if (!layer) continue;
    wordedAs(layer, p, around);
    const before = first.get(layer.name);
    if (layer.namePlace.end === layer.namePlace.start) {
      layers.push(layer);
      continue;
    }
    if (before)
      clashes.push({
        name: layer.name,
        kind: 'layer',
        first: before,
        again: layer.namePlace,
        fromUse: false,
      });
    else first.set(layer.name, layer.namePlace);
    layers.push(layer);
  }
  return layers;
}
