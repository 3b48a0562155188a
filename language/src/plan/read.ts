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
import { createPlanMemo, type Outside, type PlanMemo, type ReadLayer, type Remembered } from './memo.ts';
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
  memo.used = new Map();
  const plan = readFile(text, uri, host, memo, [uri]);
  // a run over many files must not keep them all
  for (const file of memo.files.keys()) if (file !== uri && !memo.used.has(file)) memo.files.delete(file);
  return plan;
}

function readFile(text: string, uri: string, host: PlanHost, memo: PlanMemo, chain: readonly string[]): Plan {
  const before = memo.files.get(uri);
  // what a file uses may have changed beside it
  if (before?.cut?.text === text && before.plan.uses.length === 0) return before.plan;
  const context: Context = { uri, problems: [] };
  const { statements, cut } = readStatements(text, memo, context, before?.cut);
  const faulty = context.problems.length;
  const names: NamedPlace[] = [];
  const record = statements.some((u) => u.chunk.word === 'record');
  const reader: Reader = { context, scope: emptyScope(), names, guesses: 200 };
  const reading: Reading = { context, reader, statements, record };

  const uses = readUses(reading, host, memo, chain);
  const apart = statements.filter((s) => !isLayerWord(s.chunk.word));
  const stays = before !== undefined && isSame(apart, uses, before.outside);
  if (!stays && chain.length === 1) memo.pigments.turn();
  const outside = stays ? before.outside : readOutside(reading, apart, uses, memo);
  for (const p of outside.problems) context.problems.push(p);
  for (const n of outside.names) names.push(n);
  reader.guesses = outside.guesses;
  const inLayers: Reading = { ...reading, reader: { ...reader, scope: outside.scope } };
  const { scope, where } = outside;
  const clashes = [...outside.clashes];
  const around = surroundings(statements, uses, before?.surroundings);
  const read = readLayers(inLayers, text, where, clashes, around, stays ? before.layers : []);
  const { layers } = read;
  const head = readHead(inLayers);
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
    studio: readStudio(inLayers),
    support: readSupport(inLayers),
    areas: outside.areas,
    implicitArea: outside.implicit,
    groups: outside.groups,
    pigments: outside.pigments,
    paints: outside.paints,
    mediums: outside.mediums,
    mixes: outside.mixes,
    layers,
    targets: readTargets(inLayers, where),
    samples: readSamples(inLayers, where, layers, clashes),
    notes: readNotes(inLayers),
    allows: readAllows(inLayers),
    uses,
    visible: scope,
    clashes,
    problems: settled(text, context.problems, faulty),
    circles: outside.circles,
    names,
  };
  memo.files.set(uri, { cut, surroundings: around, outside, layers: read.kept, plan });
  return surround(plan, around);
}

/** Whether everything outside the layers stands as it did, word for word and at the same place. */
const isSame = (statements: readonly Statement[], uses: readonly Use[], outside: Outside): boolean =>
  statements.length === outside.statements.length &&
  statements.every((s, i) => s === outside.statements[i]) &&
  uses.length === outside.uses.length &&
  uses.every((u, i) => {
    const was = outside.uses[i];
    return u.status === was?.status && u.uri === was.uri && u.detail === was.detail && u.plan === was.plan;
  });

function readOutside(
  reading: Reading,
  statements: readonly Statement[],
  uses: readonly Use[],
  memo: PlanMemo,
): Outside {
  const { uri } = reading.context;
  const { record } = reading;
  const context: Context = { uri, problems: [] };
  const scope = emptyScope();
  const reader: Reader = { context, scope, names: [], guesses: reading.reader.guesses };
  const own: Reading = { context, reader, statements, record };
  const clashes: Plan['clashes'][number][] = [];
  const { pigments, paints, mediums, mixes } = declareMaterials(own, scope, clashes);
  bringIn(uses, scope, clashes);
  inOrder(pigments, (statement, pigment) =>
    fillMaterial(reader, statement, 'pigment', pigment, record, memo.pigments),
  );
  for (const [statement, paint] of paints)
    fillMaterial(reader, statement, 'paint', paint, record, memo.pigments);
  for (const [statement, medium] of mediums)
    fillMaterial(reader, statement, 'medium', medium, record, memo.pigments);
  for (const [statement, mix] of mixes) fillMaterial(reader, statement, 'mix', mix, record, memo.pigments);

  const { areas, groups, names } = readAreas(own, clashes);
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
  if (implicit && !names.has(everything.name))
    names.set(everything.name, { areas: [everything.name], kind: 'area', place: everything.namePlace });
  const listed = implicit ? [everything] : areas;
  const all = listed.map((a) => a.name);
  return {
    statements,
    uses,
    scope,
    pigments: pigments.map(([, p]) => p),
    paints: paints.map(([, p]) => p),
    mediums: mediums.map(([, m]) => m),
    mixes: mixes.map(([, m]) => m),
    circles: circles([...mixes.map(([, m]) => m), ...mediums.map(([, m]) => m)]),
    areas: listed,
    groups,
    implicit,
    where: { names, all, order: new Map(all.map((a, i) => [a, i])) },
    clashes,
    problems: context.problems,
    names: reader.names,
    guesses: reader.guesses,
  };
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

/** Layers as they stand in the text; those that stand where they stood among the same declarations are what they were. */
function readLayers(
  reading: Reading,
  text: string,
  areas: Areas,
  clashes: Mutable<Plan['clashes'][number]>[],
  around: Surroundings,
  before: Remembered['layers'],
): { readonly layers: Layer[]; readonly kept: Remembered['layers'] } {
  const { reader, context } = reading;
  const layers: Layer[] = [];
  const kept: (ReadLayer | undefined)[] = [];
  const first = new Map<string, Place>();
  const add = (layer: Layer, was: ReadLayer | undefined) => {
    layers.push(layer);
    kept.push(was);
    if (layer.namePlace.end === layer.namePlace.start) return;
    const earlier = first.get(layer.name);
    if (earlier)
      clashes.push({
        name: layer.name,
        kind: 'layer',
        first: earlier,
        again: layer.namePlace,
        fromUse: false,
      });
    else first.set(layer.name, layer.namePlace);
  };
  for (const statement of reading.statements) {
    const { chunk, parsed: p } = statement;
    if (!isLayerWord(chunk.word)) continue;
    const was = before[layers.length];
    if (was?.statement === statement && was.guesses === reader.guesses) {
      for (const name of was.names) reader.names.push(name);
      add(was.layer, was);
      continue;
    }
    const from = reader.names.length;
    const faults = context.problems.length;
    const { guesses } = reader;
    const layer = readLayer(
      reader,
      areas,
      p,
      { ...chunk, text: text.slice(chunk.start, chunk.end) },
      layers.length,
      reading.record,
    );
    if (!layer) continue;
    wordedAs(layer, p, around);
    const sound = context.problems.length === faults && reader.guesses === guesses;
    add(layer, sound ? { statement, layer, names: reader.names.slice(from), guesses } : undefined);
  }
  return { layers, kept };
}
