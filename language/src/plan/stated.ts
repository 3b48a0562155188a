/**
 * Everything a file states, walked by the tables of fields: comparing, JSON, reports and the rule about bounds go this
 * way, so that a field with a row is in all of them.
 */
import type { Bounds } from '../syntax/bounds.ts';
import {
  areaClauses,
  fileClauses,
  groupClauses,
  mediumClauses,
  mixClauses,
  paintClauses,
  pigmentClauses,
  sampleClauses,
  sampleRow,
  supportClauses,
  targetClauses,
} from '../syntax/clauses.ts';
import { type Field, layerFields, pigmentFields, type Row, studioFields } from '../syntax/fields.ts';
import type { Layer, Measure, Plan, Swatch } from './plan.ts';
import { boundedOf, camel, slotsOf } from './properties.ts';
import { type Json, shown } from './shown.ts';

/** One field or clause with all its values: more than one only where it may be repeated. */
export interface Fact {
  readonly word: string;
  readonly row: Row;
  /** stands in braces rather than in the line of the declaration */
  readonly field: boolean;
  readonly values: readonly unknown[];
}

/** One declaration and what it states; the file as a whole has an empty word. */
export interface Subject {
  readonly word: string;
  readonly name: string;
  readonly layer?: Layer;
  readonly facts: readonly Fact[];
  /** the layers of a cross-section */
  readonly rows?: readonly Subject[];
}

type Table = Readonly<Record<string, Row>>;

const isKind = (value: unknown, word: string): boolean => (value as Swatch).kind === word;

/** What a thing says, in the order of its table; only what has figures to be held to bounds where that is asked. */
function factsOf(thing: object, table: Table, field = false, bounded = false): Fact[] {
  const facts: Fact[] = [];
  for (const { word, row, property, gathered, listed } of bounded
    ? boundedOf(table)
    : slotsOf(table).values()) {
    const value = (thing as Record<string, unknown>)[property];
    if (value === undefined || (listed && (value as unknown[]).length === 0)) continue;
    let values = gathered ? (value as unknown[]) : [value];
    // swatches share one list
    if (row.value === 'swatch') values = values.filter((v) => isKind(v, word));
    if (values.length > 0) facts.push({ word, row, field, values });
  }
  return facts;
}

/** The fields of a layer in the order of their table. */
export const layerRows: readonly (Field & { readonly word: string })[] = Object.entries(
  layerFields as Readonly<Record<string, Field>>,
).map(([word, row]) => ({ word, ...row }));

/** What one layer says, in the order of the table. */
export const layerFacts = (layer: Layer): readonly Fact[] => factsOf(layer, layerFields, true);

/** What of it has bounds. */
export const boundedFacts = (layer: Layer): readonly Fact[] => factsOf(layer, layerFields, true, true);

/** What to walk: `visible` adds what `use` brings in, `bounded` leaves out whatever has no bounds. */
interface Walk {
  readonly visible?: boolean;
  readonly bounded?: boolean;
}

/** Every declaration of a file with what it states. */
export function* stated(plan: Plan, { visible = false, bounded = false }: Walk = {}): Generator<Subject> {
  const said = (thing: object, table: Table, field = false) => factsOf(thing, table, field, bounded);
  const named = function* (
    word: string,
    list: Iterable<{ readonly name: string }>,
    table: Table,
    fields: Table = {},
  ): Generator<Subject> {
    for (const thing of list)
      yield {
        word,
        name: thing.name,
        facts: [...said(thing, table), ...said(thing, fields, true)],
      };
  };
  const all = <T>(own: readonly T[], seen: ReadonlyMap<string, T>): Iterable<T> =>
    visible ? new Set([...own, ...seen.values()]) : own;
  yield { word: '', name: '', facts: said(plan, fileClauses) };
  for (const use of plan.uses) yield { word: 'use', name: use.path, facts: [] };
  yield { word: 'studio', name: '', facts: said(plan.studio, studioFields, true) };
  if (plan.support) yield { word: 'support', name: '', facts: said(plan.support, supportClauses) };
  if (!plan.implicitArea) yield* named('area', plan.areas, areaClauses);
  yield* named('group', plan.groups, groupClauses);
  yield* named('pigment', all(plan.pigments, plan.visible.pigments), pigmentClauses, pigmentFields);
  yield* named('paint', all(plan.paints, plan.visible.paints), paintClauses);
  yield* named('medium', all(plan.mediums, plan.visible.mediums), mediumClauses);
  yield* named('mix', all(plan.mixes, plan.visible.mixes), mixClauses);
  for (const layer of plan.layers)
    yield { word: layer.kind, name: layer.name, layer, facts: said(layer, layerFields, true) };
  for (const target of plan.targets) yield { word: 'target', name: '', facts: said(target, targetClauses) };
  for (const sample of plan.samples)
    yield {
      word: 'sample',
      name: sample.name,
      facts: said(sample, sampleClauses),
      rows: sample.layers.map((row) => ({
        word: 'layer',
        name: row.layer.name,
        facts: said(row, sampleRow),
      })),
    };
}

const JOINTS: Partial<Record<Row['value'], string>> = { note: ' / ', preparation: ', then ' };

/** What a fact says, in the words of the text. */
export const wordsOf = ({ row, values }: Fact): string =>
  values.map((v) => shown[row.value].words(v as never)).join(JOINTS[row.value] ?? '; ');

/** What a declaration says in its line (and the layers of a cross-section), in the words of the text. */
export function lineOf({ facts, rows }: Subject): string {
  const clauses = facts
    .filter((s) => !s.field)
    .map((s) => [s.row.around?.[0], wordsOf(s), s.row.around?.[1]].filter(Boolean).join(' '));
  const layers = rows?.map((row) => [row.name, lineOf(row)].filter(Boolean).join(' ')).join(', ');
  return [clauses.join(' '), layers].filter(Boolean).join(': ');
}

/** What a fact says, as JSON: a list where the field may be repeated. */
function jsonOf({ row, values }: Fact): Json {
  const all = values.map((v) => shown[row.value].json(v as never));
  return row.repeatable ? all : (all[0] ?? null);
}

/** What counts of a fact when two versions are compared. */
export const meaningOf = ({ row, values }: Fact): Json =>
  values.map((v) => (shown[row.value].meant ?? shown[row.value].json)(v as never));

/** The figures of a fact, each with the bounds of its place. */
export const figuresOf = ({
  row,
  values,
}: Fact): readonly { readonly figure?: Measure; readonly bounds?: Bounds }[] =>
  values.flatMap(
    (v) =>
      shown[row.value].figures?.(v as never).map((figure, i) => ({ figure, bounds: row.bounds?.[i] })) ?? [],
  );

/** Facts as JSON, by their words. */
export const factsJson = (facts: readonly Fact[]): Readonly<Record<string, Json>> =>
  Object.fromEntries(facts.map((f) => [camel(f.word), jsonOf(f)]));
